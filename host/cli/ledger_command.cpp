#include "host/cli/ledger_command.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "host/catalogue/date.hpp"
#include "host/cli/json_text.hpp"
#include "host/cli/month_json.hpp"
#include "host/cli/month_sections.hpp"
#include "host/cli/number_text.hpp"
#include "host/cli/person.hpp"
#include "host/cli/text.hpp"
#include "host/desk/backup.hpp"
#include "host/desk/close.hpp"
#include "host/desk/reverse.hpp"
#include "host/desk/verify.hpp"

namespace flutebook::cli {

namespace {

using ledger::IfMissing;
using ledger::Store;

Json close_json(const desk::CloseAnswer& answer) {
    return {{"month", month_name(answer.seal.month)},
            {"entry", answer.seal.entry},
            {"head", answer.seal.head},
            {"unexplained_kg", answer.account.unexplained().to_kg()},
            {"balances", review::balances_within(answer.account, answer.tolerance)},
            {"why", answer.seal.note}};
}

std::string close_text(const desk::CloseAnswer& answer) {
    const auto& account = answer.account;
    std::string made = fmt::format("Closed {} with entry {}.\n", month_name(answer.seal.month), answer.seal.entry);
    made += fmt::format("  unexplained  {} kg, {} of issued paper; {} allowed\n", kg_text(account.unexplained()),
                        share_text(account.unexplained(), account.issued), percent_text(answer.tolerance, 2));
    if (!answer.seal.note.empty()) made += hanging("  because      ", cleaned(answer.seal.note));
    return made + "  head         " + answer.seal.head + "\n\nKeep the head elsewhere: it proves this month.\n";
}

Json reverse_json(const desk::ReverseAnswer& answer) {
    const auto& own = answer.reversal;
    return {{"entry", own.number},
            {"reverses", own.reverses.value()},
            {"date", catalogue::to_string(own.draft.date)},
            {"document", answer.reversed_kind},
            {"ref", answer.reversed_ref},
            {"head", own.hash}};
}

std::string reverse_text(const desk::ReverseAnswer& answer) {
    const auto& own = answer.reversal;
    return fmt::format("Reversed entry {} ({} {}) with entry {}, dated {}.\n  head  {}\n", own.reverses.value(),
                       answer.reversed_kind, cleaned(answer.reversed_ref), own.number,
                       catalogue::to_string(own.draft.date), own.hash);
}

Json proof_json(const ledger::Proof& proof) {
    Json tree;
    tree["holds"] = proof.holds();
    tree["entries"] = proof.entries;
    tree["head"] = proof.head;
    tree["kept_at"] = proof.kept_at ? Json(*proof.kept_at) : Json();
    tree["findings"] = Json::array();
    for (const auto& finding : proof.findings)
        tree["findings"].push_back(
            {{"entry", finding.entry ? Json(*finding.entry) : Json()}, {"finding", finding.text}});
    return tree;
}

std::string proof_text(const ledger::Proof& proof) {
    const auto entries = number_text(static_cast<double>(proof.entries), 0);
    std::string made = proof.holds()
                           ? fmt::format("Whole: {} entries, every hash and every total worked out again.\n", entries)
                           : fmt::format("Not whole: {} entries read, {} wrong.\n", entries, proof.findings.size());
    if (proof.kept_at) made += fmt::format("  the kept head is entry {}'s\n", *proof.kept_at);
    return made + "  head  " + proof.head + "\n";
}

}  // namespace

ExitCode run_close(const catalogue::Plant& plant, const std::string& ledger, const CloseCommand& asked,
                   Output& output) {
    auto store = Store::open_for_writing(ledger, IfMissing::refuse);
    const auto answer = desk::close(plant, store, {asked.month, asked.why, person_at_work()});
    output.write(asked.form == Form::json ? json_text(close_json(answer)) : close_text(answer));
    return ExitCode::done;
}

ExitCode run_reverse(const std::string& ledger, const ReverseCommand& asked, Output& output) {
    auto store = Store::open_for_writing(ledger, IfMissing::refuse);
    const auto answer = desk::reverse(store, {asked.entry, asked.why, person_at_work(), asked.date});
    output.write(asked.form == Form::json ? json_text(reverse_json(answer)) : reverse_text(answer));
    return ExitCode::done;
}

ExitCode run_verify(const std::string& ledger, const VerifyCommand& asked, Output& output) {
    const auto proof = desk::verify(ledger, asked.head);
    output.write(asked.form == Form::json ? json_text(proof_json(proof)) : proof_text(proof));
    std::vector<std::string> lines;
    for (const auto& finding : proof.findings) lines.push_back(finding.text);
    complain(lines);
    return proof.holds() ? ExitCode::done : ExitCode::refused;
}

ExitCode run_backup(const std::string& ledger, const BackupCommand& asked, Output& output) {
    const auto proof = desk::backup(ledger, asked.file);
    auto tree = proof_json(proof);
    tree["file"] = asked.file;
    output.write(asked.form == Form::json
                     ? json_text(tree)
                     : fmt::format("Copied {} entries to {}, and proved the copy whole.\n  head  {}\n",
                                   number_text(static_cast<double>(proof.entries), 0), cleaned(asked.file),
                                   proof.head));
    return ExitCode::done;
}

}  // namespace flutebook::cli
