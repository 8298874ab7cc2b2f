#include "host/month_answers/ledger_answer.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"
#include "host/base/date.hpp"

namespace flutebook::answers {

namespace {

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

}  // namespace

std::string post_document(const PostAnswer& answer, PostOptions::Keep keep) {
    const bool is_kept = keep == PostOptions::Keep::all;
    Json tree;
    tree["dry_run"] = !is_kept;
    tree["posted"] = answer.posted;
    tree["skipped"] = answer.skipped;
    tree["first_entry"] = answer.posted > 0 ? Json(answer.first_entry) : Json();
    tree["head"] = is_kept ? Json(answer.head) : Json();
    tree["files"] = Json::array();
    for (const auto& file : answer.files)
        tree["files"].push_back({{"file", file.file},
                                 {"document", name_of(file.kind)},
                                 {"posted", file.posted},
                                 {"skipped", file.skipped}});
    tree["moved"] = Json::array();
    for (const auto& flow : answer.flows)
        tree["moved"].push_back({{"from", flow.from},
                                 {"to", flow.to},
                                 {"cause", flow.cause},
                                 {"kg", flow.mass.to_kg()},
                                 {"amount", flow.money.to_double()}});
    tree["warnings"] = answer.warnings;
    return document_text("post", tree);
}

std::string reverse_document(const ReverseAnswer& answer) {
    const ledger::Entry& reversal = answer.reversal;
    return document_text("reverse", {{"entry", reversal.number},
                                     {"reverses", reversal.reverses.value()},
                                     {"date", base::to_string(reversal.draft.date)},
                                     {"document", answer.reversed_kind},
                                     {"ref", answer.reversed_ref},
                                     {"head", reversal.hash}});
}

std::string entries_document(const EntriesAnswer& answer) {
    const auto number = [](const std::optional<std::int64_t>& value) { return value ? Json(*value) : Json(); };
    Json tree;
    tree["month"] = base::to_string(answer.month / std::chrono::day(1)).substr(0, 7);
    tree["entries"] = Json::array();
    for (const auto& entry : answer.entries)
        tree["entries"].push_back({{"entry", entry.number},
                                   {"date", base::to_string(entry.draft.date)},
                                   {"document", entry.draft.kind},
                                   {"ref", entry.draft.ref},
                                   {"shift", entry.draft.shift},
                                   {"centre", entry.draft.centre},
                                   {"order", entry.draft.order},
                                   {"board", entry.draft.board},
                                   {"note", entry.draft.note},
                                   {"who", entry.who},
                                   {"written", base::utc_time(entry.when)},
                                   {"clock", entry.clock ? Json(base::utc_time(*entry.clock)) : Json()},
                                   {"reverses", number(entry.reverses)},
                                   {"reversed_by", number(entry.reversed_by)},
                                   {"head", entry.hash}});
    return document_text("entries", tree);
}

std::string verify_document(const ledger::Proof& proof) {
    return document_text("verify", proof_json(proof));
}

std::string backup_document(const ledger::BackupProof& proof, const std::string& file) {
    Json tree = proof_json(proof);
    tree["file"] = file;
    tree["cleared"] = proof.cleared;
    return document_text("backup", tree);
}

}  // namespace flutebook::answers
