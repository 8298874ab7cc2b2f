#include "host/cli/ledger_command.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"
#include "host/answers/month_json.hpp"
#include "host/base/date.hpp"
#include "host/cli/person.hpp"
#include "host/render/number_text.hpp"
#include "host/render/text.hpp"
#include "host/reports/month_sections.hpp"
#include "host/services/closing/backup.hpp"
#include "host/services/closing/close.hpp"
#include "host/services/closing/verify.hpp"
#include "host/services/posting/reverse.hpp"

namespace flutebook::cli {

namespace {

using ledger::IfMissing;
using ledger::Store;

answers::Json close_json(const services::CloseAnswer& answer) {
    return {{"month", answers::month_name(answer.seal.month)},
            {"entry", answer.seal.entry},
            {"head", answer.seal.head},
            {"unexplained_kg", answer.account.unexplained().to_kg()},
            {"balances", month::balances_within(answer.account, answer.tolerance)},
            {"why", answer.seal.note}};
}

std::string close_text(const services::CloseAnswer& answer) {
    const auto& account = answer.account;
    std::string result =
        fmt::format("Closed {} with entry {}.\n", answers::month_name(answer.seal.month), answer.seal.entry);
    result += fmt::format(
        "  unexplained  {} kg, {} of issued paper; {} allowed\n", reports::kg_text(account.unexplained()),
        reports::share_text(account.unexplained(), account.issued), render::percent_text(answer.tolerance, 2));
    if (!answer.seal.note.empty()) result += render::hanging("  because      ", render::cleaned(answer.seal.note));
    return result + "  head         " + answer.seal.head + "\n\nKeep the head elsewhere: it proves this month.\n";
}

answers::Json reverse_json(const services::ReverseAnswer& answer) {
    const auto& item = answer.reversal;
    return {{"entry", item.number},
            {"reverses", item.reverses.value()},
            {"date", base::to_string(item.draft.date)},
            {"document", answer.reversed_kind},
            {"ref", answer.reversed_ref},
            {"head", item.hash}};
}

std::string reverse_text(const services::ReverseAnswer& answer) {
    const auto& item = answer.reversal;
    return fmt::format("Reversed entry {} ({} {}) with entry {}, dated {}.\n  head  {}\n", item.reverses.value(),
                       answer.reversed_kind, render::cleaned(answer.reversed_ref), item.number,
                       base::to_string(item.draft.date), item.hash);
}

answers::Json proof_json(const ledger::Proof& proof) {
    answers::Json tree;
    tree["holds"] = proof.holds();
    tree["entries"] = proof.entries;
    tree["head"] = proof.head;
    tree["kept_at"] = proof.kept_at ? answers::Json(*proof.kept_at) : answers::Json();
    tree["findings"] = answers::Json::array();
    for (const auto& finding : proof.findings)
        tree["findings"].push_back(
            {{"entry", finding.entry ? answers::Json(*finding.entry) : answers::Json()}, {"finding", finding.text}});
    return tree;
}

std::string proof_text(const ledger::Proof& proof) {
    const auto entries = render::number_text(static_cast<double>(proof.entries), 0);
    std::string result = proof.holds()
                             ? fmt::format("Whole: {} entries, every hash and every total worked out again.\n", entries)
                             : fmt::format("Not whole: {} entries read, {} wrong.\n", entries, proof.findings.size());
    if (proof.kept_at) result += fmt::format("  the kept head is entry {}'s\n", *proof.kept_at);
    return result + "  head  " + proof.head + "\n";
}

}  // namespace

ExitCode run_close(const plant::Plant& plant, const std::string& ledger, const CloseCommand& asked, Output& output) {
    auto store = Store::open_for_writing(ledger, IfMissing::refuse);
    const auto answer = services::close(plant, store, {asked.month, asked.why, person_at_work()});
    output.write(asked.form == OutputFormat::json ? answers::json_text(close_json(answer)) : close_text(answer));
    return ExitCode::done;
}

ExitCode run_reverse(const std::string& ledger, const ReverseCommand& asked, Output& output) {
    auto store = Store::open_for_writing(ledger, IfMissing::refuse);
    const auto answer = services::reverse(store, {asked.entry, asked.why, person_at_work(), asked.date});
    output.write(asked.form == OutputFormat::json ? answers::json_text(reverse_json(answer)) : reverse_text(answer));
    return ExitCode::done;
}

ExitCode run_verify(const std::string& ledger, const VerifyCommand& asked, Output& output) {
    const auto proof = services::verify(ledger, asked.head);
    output.write(asked.form == OutputFormat::json ? answers::json_text(proof_json(proof)) : proof_text(proof));
    std::vector<std::string> lines;
    for (const auto& finding : proof.findings) lines.push_back(finding.text);
    complain(lines);
    return proof.holds() ? ExitCode::done : ExitCode::refused;
}

ExitCode run_backup(const std::string& ledger, const BackupCommand& asked, Output& output) {
    const auto proof = services::backup(ledger, asked.file);
    auto tree = proof_json(proof);
    tree["file"] = asked.file;
    output.write(asked.form == OutputFormat::json
                     ? answers::json_text(tree)
                     : fmt::format("Copied {} entries to {}, and proved the copy whole.\n  head  {}\n",
                                   render::number_text(static_cast<double>(proof.entries), 0),
                                   render::cleaned(asked.file), proof.head));
    return ExitCode::done;
}

}  // namespace flutebook::cli
