#include "host/month_pages/month_rows.hpp"

#include "host/base/date.hpp"
#include "host/charts/ranked_bars.hpp"
#include "host/month_pages/month_text.hpp"
#include "host/pages/report_parts.hpp"

namespace flutebook::pages {

namespace {

Html month_link(ledger::Month month) {
    return html("<div class=\"month-title\"><a href=\"{}\">{}</a></div>\n", month_address(month), month_words(month));
}

Address rows_at_place(const answers::CauseReview& cause, const month::PlacedLoss& place) {
    ledger::EntrySearch search;
    search.month = cause.month;
    search.cause = cause.cause;
    search.centre = place.centre;
    search.shift = place.part;
    return entries_address(search);
}

std::vector<std::string> place_bars(const answers::CauseReview& cause) {
    std::vector<charts::RankedBar> bars;
    for (const auto& place : cause.places)
        bars.push_back({{place.centre + " " + name_or(place.part, "no shift") + ": " + kg_text(place.actual) +
                             " kg, expected " + kg_text(place.expected),
                         rows_at_place(cause, place).text()},
                        place.actual.to_kg(),
                        place.expected.to_kg(),
                        name_or(cause.cause, "no cause")});
    return charts::ranked_bars(bars, "place");
}

Html place_rows(const answers::CauseReview& cause) {
    const auto bars = place_bars(cause);
    const auto values = coins_of_parts(cause.excess_values, cause.excess_value);
    std::vector<Grams> masses;
    for (const auto& place : cause.places) masses.push_back(place.actual);
    const auto shares = shares_of_parts(masses, cause.actual, cause.issued);
    Html rows;
    for (std::size_t i = 0; i < cause.places.size(); ++i) {
        const auto& place = cause.places[i];
        const Address down = rows_at_place(cause, place);
        rows += html("<tr><th scope=\"row\">{}</th>{}{}<td class=\"chart-cell\">{}</td>{}{}{}{}</tr>\n",
                     walk(down, place.centre), text_cell(name_or(place.part, "no shift")),
                     difference_cell(place.excess(), down), Html::rendered(bars[i]), number_cell(kg_text(place.actual)),
                     number_cell(kg_text(place.expected)), number_cell(shares[i]), number_cell(values[i]));
    }
    return rows;
}

Html cause_total(const answers::CauseReview& cause) {
    return html("<tr class=\"total\"><th scope=\"row\">all</th><td></td>{}<td></td>{}{}{}{}</tr>\n",
                number_cell(difference_text(cause.actual - cause.expected)), number_cell(kg_text(cause.actual)),
                number_cell(kg_text(cause.expected)), number_cell(share_text(cause.actual, cause.issued)),
                number_cell(coins_text(cause.excess_value)));
}

}  // namespace

std::string month_cause_page(const Frame& frame, const answers::CauseReview& cause) {
    ledger::EntrySearch all;
    all.month = cause.month;
    all.cause = cause.cause;
    const std::string name = name_or(cause.cause, "(no cause)");
    const Html lead = html(
        "<p class=\"lead\"><b>{}</b> kg were lost by {} in {}, <b>{}</b> kg were expected. The loss cost <b>{} {}</b> "
        "after ISO 14051; the excess was worth <b>{} {}</b> in cash.</p>\n",
        kg_text(cause.actual), name, month_words(cause.month), kg_text(cause.expected), coins_text(cause.cost),
        cause.currency, coins_text(cause.excess_value), cause.currency);
    const Html table =
        cause.places.empty()
            ? html("<p>Nothing was lost by it and nothing was expected.</p>\n")
            : scrolling("Losses by centre and shift",
                        html("<table class=\"bars places\">{}<tbody>\n{}{}</tbody></table>\n",
                             head_row({"Centre", "shift", "excess, kg", "actual, the mark is what was expected",
                                       "actual, kg", "expected, kg", "of issued", "excess in cash, " + cause.currency},
                                      2),
                             place_rows(cause), cause_total(cause)));
    return document(frame, name + ", " + month_words(cause.month),
                    month_link(cause.month) + html("<h1>{}</h1>\n", name) + lead +
                        panel("places", "Where and when",
                              html("<a class=\"end\" href=\"{}\">all rows</a>", entries_address(all)), table));
}

namespace {

std::string search_words(const ledger::EntrySearch& search) {
    std::string words;
    const auto add = [&](const std::optional<std::string>& value, const char* what, const char* none) {
        if (value) words += (words.empty() ? "" : ", ") + std::string(what) + " " + name_or(*value, none);
    };
    add(search.kind, "of kind", "no kind");
    add(search.cause, "with cause", "no cause");
    add(search.centre, "at", "no centre");
    add(search.shift, "in shift", "no shift");
    add(search.order, "of order", "no order");
    if (search.after > 0)
        words += (words.empty() ? "" : ", ") + std::string("after entry ") + std::to_string(search.after);
    return words.empty() ? "all" : words;
}

std::string correction_words(const ledger::FoundEntry& entry) {
    if (entry.reverses) return "reverses entry " + std::to_string(*entry.reverses);
    if (entry.reversed_by) return "reversed by entry " + std::to_string(*entry.reversed_by);
    return {};
}

Html found_row(const ledger::FoundEntry& entry) {
    const std::string correction = correction_words(entry);
    const std::string note =
        correction.empty() || entry.note.empty() ? correction + entry.note : correction + ": " + entry.note;
    return html("<tr><th scope=\"row\">{}</th>{}{}{}{}{}{}{}{}{}<td>{}</td></tr>\n",
                walk(entry_address(entry.number), entry.ref), text_cell(base::to_string(entry.date)),
                text_cell(entry.kind), text_cell(entry.shift), text_cell(entry.centre),
                entry.order.empty() ? text_cell("")
                                    : html("<td class=\"text\">{}</td>", walk(order_address(entry.order), entry.order)),
                number_cell(kg_text(entry.lost)), number_cell(kg_text(entry.expected)),
                number_cell(difference_text(entry.lost - entry.expected)), text_cell(entry.who), note);
}

Html found_total(const answers::EntryList& list) {
    return html(
        "<tr class=\"total\"><th scope=\"row\">{} rows on this page</th><td></td><td></td><td></td><td></td><td></td>"
        "{}{}{}<td></td><td></td></tr>\n",
        list.found.entries.size(), number_cell(kg_text(list.lost)), number_cell(kg_text(list.expected)),
        number_cell(difference_text(list.lost - list.expected)));
}

Html page_links(const answers::EntryList& list) {
    Html links;
    auto search = list.search;
    if (search.after > 0) {
        search.after = 0;
        links += html("<a href=\"{}\">the first rows</a>", entries_address(search));
    }
    if (list.found.has_more) {
        search.after = list.found.entries.back().number;
        links += html("<a href=\"{}\" rel=\"next\">the next {} rows</a>", entries_address(search), search.limit);
    }
    return links.is_empty() ? Html() : html("<nav class=\"pages\" aria-label=\"Pages of rows\">{}</nav>\n", links);
}

}  // namespace

std::string entry_list_page(const Frame& frame, const answers::EntryList& list) {
    Html rows;
    for (const auto& entry : list.found.entries) rows += found_row(entry);
    const auto head = head_row({"Ref", "date", "document", "shift", "centre", "order", "lost, kg", "expected, kg",
                                "excess, kg", "posted by", "note"},
                               6, 2);
    const Html table =
        list.found.entries.empty()
            ? html("<p>No row is like this.</p>\n")
            : scrolling("Rows", html("<table>{}<tbody>\n{}{}</tbody></table>\n", head, rows, found_total(list)));
    const std::string title = "Rows of " + month_words(list.search.month);
    return document(frame, title,
                    month_link(list.search.month) + html("<h1>{}</h1>\n", title) +
                        panel("rows", search_words(list.search), Html(), table + page_links(list)));
}

}  // namespace flutebook::pages
