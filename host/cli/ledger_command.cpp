#include "host/cli/ledger_command.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"
#include "host/answers/month_json.hpp"
#include "host/base/date.hpp"
#include "host/cli/person.hpp"
#include "host/render/text_report.hpp"
#include "host/reports/ledger_reports.hpp"
#include "host/services/closing/backup.hpp"
#include "host/services/closing/close.hpp"
#include "host/services/closing/verify.hpp"
#include "host/services/posting/reverse.hpp"

namespace flutebook::cli {

namespace {

using ledger::IfMissing;
using ledger::Store;

answers::Json close_json(const answers::CloseAnswer& answer) {
    return {{"month", answers::month_name(answer.seal.month)},
            {"entry", answer.seal.entry},
            {"head", answer.seal.head},
            {"unexplained_kg", answer.account.unexplained().to_kg()},
            {"balances", month::balances_within(answer.account, answer.tolerance)},
            {"why", answer.seal.note}};
}

answers::Json reverse_json(const answers::ReverseAnswer& answer) {
    const auto& item = answer.reversal;
    return {{"entry", item.number},
            {"reverses", item.reverses.value()},
            {"date", base::to_string(item.draft.date)},
            {"document", answer.reversed_kind},
            {"ref", answer.reversed_ref},
            {"head", item.hash}};
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

}  // namespace

ExitCode run_close(const plant::Plant& plant, const std::string& ledger, const CloseCommand& asked, Output& output) {
    auto store = Store::open_for_writing(ledger, IfMissing::refuse);
    const auto answer = services::close(plant, store, {asked.month, asked.why, person_at_work()});
    output.write(asked.form == OutputFormat::json ? answers::document_text("close", close_json(answer))
                                                  : render::to_text(reports::close_report(answer)));
    return ExitCode::done;
}

ExitCode run_reverse(const std::string& ledger, const ReverseCommand& asked, Output& output) {
    auto store = Store::open_for_writing(ledger, IfMissing::refuse);
    const auto answer = services::reverse(store, {asked.entry, asked.why, person_at_work(), asked.date});
    output.write(asked.form == OutputFormat::json ? answers::document_text("reverse", reverse_json(answer))
                                                  : render::to_text(reports::reverse_report(answer)));
    return ExitCode::done;
}

ExitCode run_verify(const std::string& ledger, const VerifyCommand& asked, Output& output) {
    const auto proof = services::verify(ledger, asked.head);
    output.write(asked.form == OutputFormat::json ? answers::document_text("verify", proof_json(proof))
                                                  : render::to_text(reports::verify_report(proof)));
    std::vector<std::string> lines;
    for (const auto& finding : proof.findings) lines.push_back(finding.text);
    complain(lines);
    return proof.holds() ? ExitCode::done : ExitCode::refused;
}

ExitCode run_backup(const std::string& ledger, const BackupCommand& asked, Output& output) {
    const auto proof = services::backup(ledger, asked.file);
    if (asked.form == OutputFormat::json) {
        auto tree = proof_json(proof);
        tree["file"] = asked.file;
        output.write(answers::document_text("backup", tree));
    } else {
        output.write(render::to_text(reports::backup_report(asked.file, proof)));
    }
    return ExitCode::done;
}

}  // namespace flutebook::cli
