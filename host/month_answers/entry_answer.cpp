#include "host/month_answers/entry_answer.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"
#include "host/base/date.hpp"
#include "host/month_answers/month_answer.hpp"

namespace flutebook::answers {

namespace {

template <typename Value>
Json maybe(const std::optional<Value>& value) {
    return value ? Json(*value) : Json();
}

Json found_json(const ledger::FoundEntry& entry) {
    return {{"entry", entry.number},
            {"date", base::to_string(entry.date)},
            {"document", entry.kind},
            {"ref", entry.ref},
            {"shift", entry.shift},
            {"centre", entry.centre},
            {"order", entry.order},
            {"note", entry.note},
            {"who", entry.who},
            {"reverses", maybe(entry.reverses)},
            {"reversed_by", maybe(entry.reversed_by)},
            {"lost_kg", entry.lost.to_kg()},
            {"expected_kg", entry.expected.to_kg()}};
}

Json count_json(const std::optional<ledger::Count>& count) {
    if (!count) return {};
    return {{"account", count->account}, {"of", count->material}, {"kg", count->mass.to_kg()}};
}

}  // namespace

std::string entry_list_document(const EntryList& answer) {
    const auto& search = answer.search;
    const auto& entries = answer.found.entries;
    Json tree;
    tree["month"] = month_name(search.month);
    tree["kind"] = maybe(search.kind);
    tree["centre"] = maybe(search.centre);
    tree["shift"] = maybe(search.shift);
    tree["order"] = maybe(search.order);
    tree["cause"] = maybe(search.cause);
    tree["after"] = search.after;
    tree["next_after"] = answer.found.has_more ? Json(entries.back().number) : Json();
    tree["lost_kg"] = answer.lost.to_kg();
    tree["expected_kg"] = answer.expected.to_kg();
    tree["entries"] = Json::array();
    for (const auto& entry : entries) tree["entries"].push_back(found_json(entry));
    return document_text("entry-list", tree);
}

std::string entry_document(const EntryAnswer& answer) {
    const ledger::Entry& entry = answer.entry;
    const ledger::Draft& draft = entry.draft;
    Json tree = {{"entry", entry.number},
                 {"date", base::to_string(draft.date)},
                 {"document", draft.kind},
                 {"ref", draft.ref},
                 {"shift", draft.shift},
                 {"centre", draft.centre},
                 {"order", draft.order},
                 {"board", draft.board},
                 {"note", draft.note},
                 {"who", entry.who},
                 {"written", base::utc_time(entry.when)},
                 {"reverses", maybe(entry.reverses)},
                 {"reversed_by", maybe(entry.reversed_by)},
                 {"head", entry.hash},
                 {"content", draft.content}};
    tree["moved"] = Json::array();
    for (const auto& movement : draft.movements)
        tree["moved"].push_back({{"from", movement.from},
                                 {"to", movement.to},
                                 {"material", movement.material},
                                 {"cause", movement.cause},
                                 {"kg", movement.mass.to_kg()},
                                 {"amount", movement.money.to_double()}});
    tree["expected"] = Json::array();
    for (const auto& expected : draft.expected)
        tree["expected"].push_back({{"cause", expected.cause}, {"kg", expected.mass.to_kg()}});
    tree["count"] = count_json(draft.count);
    return document_text("entry", tree);
}

}  // namespace flutebook::answers
