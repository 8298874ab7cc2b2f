#include "host/month_pages/month_trial.hpp"

#include <algorithm>

#include "host/month_pages/month_text.hpp"
#include "host/month_reports/ledger_reports.hpp"
#include "host/pages/place_links.hpp"
#include "host/pages/report_parts.hpp"

namespace flutebook::pages {

namespace {

Html told_row(const answers::DocumentTrial& trial, const std::vector<std::string>& texts, const char* classes) {
    Html result;
    for (const std::string& text : texts)
        result += html("<tr class=\"{}\"><td colspan=\"{}\">{}</td></tr>\n", classes, trial.heads.size() + 1, text);
    return result;
}

Html tried_rows(const answers::DocumentTrial& trial) {
    Html rows;
    for (const auto& row : trial.rows) {
        Html cells;
        for (const std::string& field : row.fields) cells += text_cell(field);
        rows += html("<tr class=\"{}\"><th scope=\"row\" class=\"quiet\">{}</th>{}</tr>\n",
                     row.faults.empty() ? "" : "refused", row.line, cells);
        rows += told_row(trial, row.faults, "fault") + told_row(trial, row.doubts, "doubt");
    }
    std::vector<std::string> heads = {"line"};
    heads.insert(heads.end(), trial.heads.begin(), trial.heads.end());
    return scrolling("Rows of " + trial.file,
                     html("<table>{}<tbody>\n{}</tbody></table>\n", head_row(heads, heads.size()), rows));
}

std::string rows_words(std::int64_t count) {
    return std::to_string(count) + (count == 1 ? " row" : " rows");
}

// Rows that can be posted and are likely a slip.
std::int64_t doubtful(const answers::DocumentTrial& trial) {
    return std::count_if(trial.rows.begin(), trial.rows.end(), [](const auto& row) { return !row.doubts.empty(); });
}

std::string verdict(const answers::DocumentTrial& trial) {
    if (trial.answer) {
        const std::string text = rows_words(trial.answer->posted) + " would be posted, " +
                                 std::to_string(trial.answer->skipped) + " posted before";
        return doubtful(trial) == 0 ? text : text + "; " + rows_words(doubtful(trial)) + " to look at";
    }
    std::size_t refused = 0;
    for (const auto& row : trial.rows)
        if (!row.faults.empty()) ++refused;
    return std::to_string(refused) + " of " + std::to_string(trial.all_rows) + " rows refused, so none is posted";
}

Html of_file(const std::vector<std::string>& texts, const char* classes) {
    Html result;
    for (const std::string& text : texts) result += html("<p class=\"{}\">{}</p>\n", classes, text);
    return result;
}

Html post_form(const Frame& frame, const answers::DocumentTrial& trial, const std::string& digest) {
    if (!trial.answer || trial.answer->posted == 0) return {};
    return html(
        "<div id=\"post\"><form method=\"post\" action=\"{}\">{}<button class=\"main\">Post {}</button></form>"
        "<p class=\"note\">Posted is this very text, known by its hash <span class=\"hash\">{}</span></p></div>\n",
        Address("/documents").at(digest), token_field(frame), rows_words(trial.answer->posted), digest);
}

Html mend_form(const Frame& frame, const answers::DocumentTrial& trial, const std::string& text) {
    const Html form = html(
        "<form class=\"act\" method=\"post\" action=\"{}\">{}<input type=\"hidden\" name=\"name\" value=\"{}\">"
        "<label class=\"field\"><span>Its rows, the header row first</span><textarea name=\"text\" rows=\"12\" "
        "spellcheck=\"false\" required>\n{}</textarea></label><div><button>Show what it would post</button></div>"
        "</form>\n",
        Address("/documents"), token_field(frame), trial.file, text);
    if (!trial.answer) return panel("mend", "Mend it and look again", Html(), form);
    return html("<details class=\"panel\" id=\"mend\"><summary>Change it before it is posted</summary>{}</details>\n",
                form);
}

}  // namespace

std::string document_trial_page(const Frame& frame, const plant::Plant& plant, const answers::DocumentTrial& trial,
                                const std::string& digest, const std::string& text) {
    Html body = panel("rows", "Rows of " + trial.file,
                      html("<span class=\"state {}\">{}</span>", trial.answer ? "" : "refused", verdict(trial)),
                      of_file(trial.faults, "worse") + of_file(trial.warnings, "warning") +
                          post_form(frame, trial, digest) + tried_rows(trial));
    if (trial.answer) {
        auto report = month_reports::post_report(plant, *trial.answer, answers::PostOptions::Keep::nothing);
        report.heading.reset();
        const PlaceLinks places(&plant);
        body += report_html(report, "moves", &places);
    }
    body += mend_form(frame, trial, text);
    return document(frame, "What it would post",
                    html("<h1>What it would post</h1>\n<div class=\"stack\">{}</div>\n", body));
}

}  // namespace flutebook::pages
