#include "host/month_answers/month_answer.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"
#include "host/base/date.hpp"

namespace flutebook::answers {

namespace {

template <typename Causes>
Json causes_json(const Causes& causes, Grams (*mass)(const typename Causes::value_type&)) {
    Json tree = Json::object();
    for (const auto& cause : causes) tree[cause.cause] = mass(cause).to_kg();
    return tree;
}

template <typename Cause>
Grams actual(const Cause& cause) {
    return cause.actual;
}
template <typename Cause>
Grams expected(const Cause& cause) {
    return cause.expected;
}

Json waste_cost_json(const month::MonthAccount& account) {
    Json tree = Json::object();
    for (const auto& cause : account.causes) tree[cause.cause] = cause.cost.to_double();
    tree["unexplained"] = account.unexplained_cost.to_double();
    tree["idle"] = account.idle_cost.to_double();
    tree["corrections"] = account.corrections_cost.to_double();
    return tree;
}

Json excess_json(const MonthAnswer& answer) {
    Json tree = Json::object();
    for (const auto& cause : answer.account.causes)
        tree[cause.cause] = month::excess_value(answer.account, cause, answer.scrap).to_double();
    return tree;
}

void add_stocks(Json& tree, const month::MonthAccount& account) {
    tree["unexplained_kg"] = Json::object();
    tree["centre_kg"] = Json::object();
    for (const auto& centre : account.centres) {
        tree["unexplained_kg"][centre.centre] = centre.unexplained().to_kg();
        tree["centre_kg"][centre.centre] = {{"open", centre.open.to_kg()},
                                            {"in", centre.in.to_kg()},
                                            {"out", centre.out().to_kg()},
                                            {"close", centre.close.to_kg()}};
    }
    const auto& floor = account.floor;
    tree["unexplained_kg"]["floor"] = (-floor.counted).to_kg();
    tree["floor_kg"] = {{"open", floor.open.to_kg()},       {"made", floor.made.to_kg()},
                        {"fed", floor.fed.to_kg()},         {"returned", floor.returned.to_kg()},
                        {"counted", floor.counted.to_kg()}, {"close", floor.close.to_kg()}};
    const auto& loose = account.loose_scrap;
    tree["loose_scrap_kg"] = {{"open", loose.open.to_kg()},
                              {"made", loose.in.to_kg()},
                              {"baled", loose.out.to_kg()},
                              {"counted", loose.counted.to_kg()},
                              {"close", loose.close.to_kg()}};
    const auto& yard = account.bale_yard;
    tree["bale_yard_kg"] = {{"open", yard.open.to_kg()},
                            {"baled", yard.in.to_kg()},
                            {"sent", yard.out.to_kg()},
                            {"counted", yard.counted.to_kg()},
                            {"close", yard.close.to_kg()}};
}

void add_parts(Json& tree, const MonthAnswer& answer) {
    tree["by"] = axis_name(*answer.by);
    tree["parts"] = Json::array();
    for (const auto& part : answer.parts)
        tree["parts"].push_back({{"of", part.of},
                                 {"issued_kg", part.issued.to_kg()},
                                 {"made_kg", part.sheets.to_kg()},
                                 {"fed_kg", part.fed.to_kg()},
                                 {"product_kg", part.product.to_kg()},
                                 {"loss_kg", causes_json(part.causes, actual<month::PartCause>)},
                                 {"expected_kg", causes_json(part.causes, expected<month::PartCause>)}});
}

}  // namespace

std::optional<double> MonthAnswer::recycling_rate_of_year() const {
    Grams sent, made;
    for (const auto& month : trend) {
        sent += month.sent;
        made += month.loose_scrap.in;
    }
    return month::share_of(sent, made);
}

std::string month_document(const MonthAnswer& answer) {
    const auto& account = answer.account;
    Json tree;
    tree["month"] = month_name(account.month);
    tree["issued_kg"] = account.issued.to_kg();
    tree["adhesive_kg"] = account.adhesive.to_kg();
    tree["product_kg"] = account.product.to_kg();
    tree["loss_kg"] = causes_json(account.causes, actual<month::CauseAccount>);
    tree["expected_kg"] = causes_json(account.causes, expected<month::CauseAccount>);
    add_stocks(tree, account);
    tree["sent_kg"] = account.sent.to_kg();
    tree["paid_kg"] = account.paid.to_kg();
    tree["revenue"] = account.revenue.to_double();
    tree["waste_cost"] = waste_cost_json(account);
    tree["excess_value"] = excess_json(answer);
    tree["scrap_value_per_kg"] = answer.scrap.of == month::ScrapValue::Of::nothing ? Json() : Json(answer.scrap.per_kg);
    tree["product_cost"] = account.product_cost.to_double();
    tree["floor_cost"] = {{"open", account.floor.open_cost.to_double()},
                          {"close", account.floor.close_cost.to_double()}};
    const auto rate = account.recycling_rate();
    tree["recycling_rate"] = rate ? Json(*rate) : Json();
    tree["corrections"] = Json::array();
    for (const auto& row : answer.corrected_rows)
        tree["corrections"].push_back({{"entry", row.entry},
                                       {"date", base::to_string(row.date)},
                                       {"document", row.kind},
                                       {"ref", row.ref},
                                       {"reverses", row.is_reversal ? Json(base::to_string(row.undone_on)) : Json()},
                                       {"note", row.note}});
    tree["close_waits_for"] = answer.close_waits_for;
    tree["losses_quoted_by"] = answer.losses_quoted_by;
    tree["trim"] = trim_answers::trim_months_json(answer.trim);
    if (answer.by) add_parts(tree, answer);
    return document_text("month", tree);
}

std::string close_document(const CloseAnswer& answer) {
    return document_text("close", {{"month", month_name(answer.seal.month)},
                                   {"entry", answer.seal.entry},
                                   {"head", answer.seal.head},
                                   {"unexplained_kg", answer.account.unexplained().to_kg()},
                                   {"balances", month::balances_within(answer.account, answer.tolerance)},
                                   {"why", answer.seal.note},
                                   {"clock", answer.clock_note.empty() ? Json() : Json(answer.clock_note)}});
}

std::string month_name(ledger::Month month) {
    return fmt::format("{}-{:02}", static_cast<int>(month.year()), static_cast<unsigned>(month.month()));
}

const char* axis_name(ledger::Axis axis) {
    switch (axis) {
        case ledger::Axis::centre:
            return "machine";
        case ledger::Axis::shift:
            return "shift";
        case ledger::Axis::board:
            return "board";
        case ledger::Axis::order:
            return "order";
    }
    return "";
}

}  // namespace flutebook::answers
