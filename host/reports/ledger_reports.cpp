// Each begins with one sentence that says what was done; the newest head of the ledger's chain stands last.
#include "host/reports/ledger_reports.hpp"

#include <fmt/format.h>

#include "host/answers/month_answer.hpp"
#include "host/base/date.hpp"
#include "host/render/number_text.hpp"
#include "host/reports/building.hpp"
#include "host/reports/month_report.hpp"

namespace flutebook::reports {

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
    if (answer.skipped > 0) text += fmt::format("; {} posted before", rows_text(answer.skipped));
    return text;
}

ReportTable files_table(const PostAnswer& answer) {
    ReportTable table{"files",
                      {name_column("file"), text_column("document"), number_column("posted"), number_column("before")}};
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

Report short_report(const char* kind, ReportSection section) {
    return {kind, "", std::nullopt, {std::move(section)}};
}

}  // namespace

Report post_report(const plant::Plant& plant, const PostAnswer& answer, PostOptions::Keep keep) {
    Report report = short_report("post", {posted_text(answer, keep), {files_table(answer)}});
    if (!answer.flows.empty()) report.sections.push_back({"What they moved", {flows_table(answer, plant.currency)}});
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
                          ? render::whole_text(share(account.unexplained(), account.issued)) + " of issued paper"
                          : std::string("no paper was issued");
    Facts facts = {{"unexplained",
                    {fmt::format("{}, {}; {} allowed", unexplained, part, render::percent_text(answer.tolerance, 2))}}};
    if (!answer.seal.note.empty()) facts.push_back({"because", {answer.seal.note}});
    if (!answer.clock_note.empty()) facts.push_back({"clock", {answer.clock_note}});
    facts.push_back(head_fact(answer.seal.head));
    Report report = short_report(
        "close", {fmt::format("Closed {} with entry {}.", answers::month_name(answer.seal.month), answer.seal.entry),
                  {std::move(facts)}});
    report.sections.push_back({"", {Note{"Keep the head in another place: it proves this month."}}});
    return report;
}

Report reverse_report(const answers::ReverseAnswer& answer) {
    const auto& item = answer.reversal;
    return short_report("reverse", {fmt::format("Reversed entry {} ({} {}) with entry {}, dated {}.",
                                                item.reverses.value(), answer.reversed_kind, answer.reversed_ref,
                                                item.number, base::to_string(item.draft.date)),
                                    {Facts{head_fact(item.hash)}}});
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

}  // namespace flutebook::reports
