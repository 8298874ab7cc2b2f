// Each begins with one sentence that says what was done; the newest head of the ledger's chain stands last.
#include "host/month_reports/ledger_reports.hpp"

#include <fmt/format.h>

#include "host/base/date.hpp"
#include "host/month_answers/month_answer.hpp"
#include "host/month_reports/month_report.hpp"
#include "host/render/number_text.hpp"
#include "host/reports/building.hpp"

namespace flutebook::month_reports {

using namespace reports;

namespace {

using answers::PostAnswer;
using answers::PostOptions;

std::string count_text(std::int64_t count) {
    return render::number_text(static_cast<double>(count), 0);
}

Number count(std::int64_t value) {
    return {static_cast<double>(value), 0};
}

std::string rows_text(std::int64_t rows) {
    return count_text(rows) + (rows == 1 ? " row" : " rows");
}

render::LabelledText head_fact(const std::string& head) {
    return {"head", {head}};
}

std::string posted_text(const PostAnswer& answer, PostOptions::Keep keep) {
    std::string text = keep == PostOptions::Keep::all ? "Posted " : "Would post ";
    text += rows_text(answer.posted);
    if (answer.posted == 1) text += fmt::format(", entry {}", answer.first_entry);
    if (answer.posted > 1)
        text += fmt::format(", entries {} to {}", answer.first_entry, answer.first_entry + answer.posted - 1);
    if (answer.skipped > 0) text += fmt::format("; {} skipped, posted before", rows_text(answer.skipped));
    return text;
}

ReportTable files_table(const PostAnswer& answer) {
    ReportTable table{
        "files", {name_column("file"), text_column("document"), number_column("posted"), number_column("skipped")}};
    for (const auto& file : answer.files)
        table.add({file.file, name_of(file.kind), count(file.posted), count(file.skipped)});
    return table;
}

ReportTable flows_table(const PostAnswer& answer, const std::string& currency) {
    ReportTable table{"flows",
                      {text_column("from"), text_column("to"), name_column("cause"), number_column("", "kg"),
                       number_column("", currency)}};
    for (const auto& flow : answer.flows)
        table.add({flow.from, flow.to, flow.cause, flow.mass == Grams() ? Cell() : Cell(kg(flow.mass)),
                   flow.money == Money() ? Cell() : Cell(Amount{flow.money})});
    return table;
}

// What there is to say of an entry besides its document.
std::vector<Note> remarks_on(const ledger::Entry& entry) {
    std::vector<Note> notes;
    const auto add = [&](std::string text) { notes.push_back({std::move(text), Note::Kind::sentence, 1}); };
    if (entry.reverses) add(fmt::format("reverses entry {}", *entry.reverses));
    if (entry.reversed_by) add(fmt::format("reversed by entry {}", *entry.reversed_by));
    if (entry.clock) add(fmt::format("the computer's clock said {}", base::utc_time(*entry.clock)));
    if (!entry.draft.note.empty()) add("note: " + entry.draft.note);
    return notes;
}

Report short_report(const char* kind, ReportSection section) {
    return {kind, "", std::nullopt, {std::move(section)}};
}

}  // namespace

Report post_report(const plant::Plant& plant, const PostAnswer& answer, PostOptions::Keep keep) {
    Report report = short_report("post", {posted_text(answer, keep), {files_table(answer)}});
    if (!answer.flows.empty()) report.sections.push_back({"Movements", {flows_table(answer, plant.currency)}});
    if (keep == PostOptions::Keep::nothing)
        report.sections.push_back({"", {Note{"A dry run: nothing was kept."}}});
    else
        report.sections.push_back({"", {Facts{head_fact(answer.head)}}});
    return report;
}

Report close_report(const answers::CloseAnswer& answer) {
    const auto& account = answer.account;
    const auto unexplained = render::whole_text(kg(account.unexplained())) + " kg";
    const auto part = account.issued > Grams()
                          ? render::whole_text(share(account.unexplained(), account.issued)) + " of paper issued"
                          : std::string("no paper was issued");
    Facts facts = {
        {"unexplained",
         {fmt::format("{}, {}; tolerance {}", unexplained, part, render::percent_text(answer.tolerance, 2))}}};
    if (!answer.seal.note.empty()) facts.push_back({"reason", {answer.seal.note}});
    if (!answer.clock_note.empty()) facts.push_back({"clock", {answer.clock_note}});
    facts.push_back(head_fact(answer.seal.head));
    Report report = short_report(
        "close", {fmt::format("Closed {} with entry {}.", answers::month_name(answer.seal.month), answer.seal.entry),
                  {std::move(facts)}});
    report.sections.push_back({"",
                               {Note{"Keep the head in another place: `flutebook verify --head HEAD` proves by it that "
                                     "nothing was changed since."}}});
    return report;
}

Report reverse_report(const answers::ReverseAnswer& answer) {
    const auto& item = answer.reversal;
    return short_report("reverse", {fmt::format("Reversed entry {} ({} {}) with entry {}, dated {}.",
                                                item.reverses.value(), answer.reversed_kind, answer.reversed_ref,
                                                item.number, base::to_string(item.draft.date)),
                                    {Facts{head_fact(item.hash)}}});
}

Report entries_report(const answers::EntriesAnswer& answer) {
    ReportTable table{"entries",
                      {text_column("entry"), text_column("date"), name_column("document"), name_column("centre"),
                       name_column("order"), name_column("by"), text_column("written, UTC")}};
    for (const auto& entry : answer.entries) {
        const auto& draft = entry.draft;
        table.add({std::to_string(entry.number), base::to_string(draft.date), draft.kind + " " + draft.ref,
                   draft.centre, draft.order, entry.who, base::utc_time(entry.when)});
        table.rows.back().notes = remarks_on(entry);
    }
    const auto count = count_text(static_cast<std::int64_t>(answer.entries.size()));
    return short_report("entries",
                        {fmt::format("{}: {} entr{}, in the order of posting", answers::month_name(answer.month), count,
                                     answer.entries.size() == 1 ? "y" : "ies"),
                         {std::move(table)}});
}

Report verify_report(const ledger::Proof& proof) {
    const auto entries = count_text(static_cast<std::int64_t>(proof.entries));
    Facts facts;
    if (proof.kept_at) facts.push_back({"kept head", {fmt::format("entry {}", *proof.kept_at)}});
    facts.push_back(head_fact(proof.head));
    return short_report(
        "verify", {proof.holds() ? fmt::format("Ledger verified: {} entries, all hashes and totals match", entries)
                                 : fmt::format("Ledger not verified: {} entries read, {} findings", entries,
                                               proof.findings.size()),
                   {std::move(facts)}});
}

Report backup_report(const std::string& file, const ledger::Proof& proof) {
    return short_report("backup", {fmt::format("Copied {} entries to {}; the copy is verified",
                                               count_text(static_cast<std::int64_t>(proof.entries)), file),
                                   {Facts{head_fact(proof.head)}}});
}

}  // namespace flutebook::month_reports
