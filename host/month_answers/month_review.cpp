#include "host/month_answers/month_review.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"

namespace flutebook::answers {

namespace {

Json figures_json(const month::MonthAccount& account) {
    return {{"month", month_name(account.month)},        {"issued_kg", account.issued.to_kg()},
            {"product_kg", account.product.to_kg()},     {"lost_kg", account.lost().to_kg()},
            {"expected_kg", account.expected().to_kg()}, {"unexplained_kg", account.unexplained().to_kg()},
            {"sent_kg", account.sent.to_kg()},           {"waste_cost", account.waste_cost().to_double()},
            {"revenue", account.revenue.to_double()}};
}

Json maybe_figures(const std::optional<month::MonthAccount>& account) {
    return account ? figures_json(*account) : Json();
}

void add_sides(Json& tree, const month::TwoSides& excess, const month::TwoSides& unexplained) {
    tree["beyond_expected_kg"] = excess.over.to_kg();
    tree["below_expected_kg"] = excess.under.to_kg();
    tree["missing_kg"] = unexplained.over.to_kg();
    tree["found_kg"] = unexplained.under.to_kg();
}

Json together_json(const MonthsTogether& months) {
    Json tree = {{"first", month_name(months.first)},
                 {"last", month_name(months.last)},
                 {"months", months.months},
                 {"issued_kg", months.issued.to_kg()},
                 {"product_kg", months.product.to_kg()},
                 {"lost_kg", months.lost.to_kg()},
                 {"expected_kg", months.expected.to_kg()}};
    add_sides(tree, months.excess, months.unexplained);
    tree["sent_kg"] = months.sent.to_kg();
    tree["waste_cost"] = months.waste_cost.to_double();
    tree["excess_value"] = months.excess_value.to_double();
    tree["revenue"] = months.revenue.to_double();
    return tree;
}

Json parts_json(const std::vector<LossOfPart>& parts) {
    Json list = Json::array();
    for (const LossOfPart& part : parts)
        list.push_back({{"of", part.part},
                        {"actual_kg", part.actual.to_kg()},
                        {"expected_kg", part.expected.to_kg()},
                        {"excess_kg", part.excess().to_kg()},
                        {"excess_value", part.excess_value.to_double()}});
    return list;
}

void add_lists(Json& tree, const MonthReview& answer) {
    tree["streams"] = Json::array();
    for (const MassStream& stream : answer.streams)
        tree["streams"].push_back({{"from", stream.from}, {"to", stream.to}, {"kg", stream.mass.to_kg()}});
    tree["machines"] = Json::array();
    for (const LossOfMachine& machine : answer.machines)
        tree["machines"].push_back({{"machine", machine.machine},
                                    {"shifts", parts_json(machine.shifts)},
                                    {"months", parts_json(machine.months)}});
    tree["orders"] = answer.unranked_movements > 0 ? Json() : parts_json(answer.orders);
    tree["mills"] = Json::array();
    for (const SaleToMill& sale : answer.mills)
        tree["mills"].push_back({{"mill", sale.mill},
                                 {"grade", sale.grade},
                                 {"tickets", sale.tickets},
                                 {"sent_kg", sale.sent.to_kg()},
                                 {"paid_kg", sale.paid.to_kg()},
                                 {"revenue", sale.revenue.to_double()}});
    tree["trend"] = Json::array();
    for (const auto& account : answer.month.trend) tree["trend"].push_back(figures_json(account));
}

}  // namespace

std::string month_review_document(const MonthReview& answer) {
    const month::MonthAccount& account = answer.month.account;
    Json tree;
    tree["month"] = month_name(account.month);
    tree["next"] = answer.next ? Json(month_name(*answer.next)) : Json();
    tree["currency"] = answer.currency;
    tree["issued_kg"] = account.issued.to_kg();
    tree["product_kg"] = account.product.to_kg();
    tree["lost_kg"] = account.lost().to_kg();
    tree["expected_kg"] = account.expected().to_kg();
    add_sides(tree, month::excess_sides(account), month::unexplained_sides(account));
    tree["waste_cost"] = account.waste_cost().to_double();
    tree["excess_value"] = month::excess_value(account, answer.month.scrap).to_double();
    tree["beyond_expected_value"] = answer.beyond_value.to_double();
    tree["below_expected_value"] = answer.below_value.to_double();
    tree["waste_target"] = answer.target ? Json(*answer.target) : Json();
    tree["before"] = maybe_figures(answer.before);
    tree["year_ago"] = maybe_figures(answer.year_ago);
    tree["year_to_date"] = together_json(answer.to_date);
    tree["last_year_to_date"] = answer.last_year ? together_json(*answer.last_year) : Json();
    add_lists(tree, answer);
    return document_text("month-review", tree);
}

std::string cause_review_document(const CauseReview& answer) {
    Json tree;
    tree["month"] = month_name(answer.month);
    tree["cause"] = answer.cause;
    tree["currency"] = answer.currency;
    tree["actual_kg"] = answer.actual.to_kg();
    tree["expected_kg"] = answer.expected.to_kg();
    tree["excess_value"] = answer.excess_value.to_double();
    tree["waste_cost"] = answer.cost.to_double();
    tree["places"] = Json::array();
    for (std::size_t i = 0; i < answer.places.size(); ++i) {
        const month::PlacedLoss& place = answer.places[i];
        tree["places"].push_back({{"centre", place.centre},
                                  {"shift", place.part},
                                  {"actual_kg", place.actual.to_kg()},
                                  {"expected_kg", place.expected.to_kg()},
                                  {"excess_kg", place.excess().to_kg()},
                                  {"excess_value", answer.excess_values[i].to_double()}});
    }
    return document_text("cause", tree);
}

std::string month_list_document(const MonthList& answer) {
    Json tree;
    tree["currency"] = answer.currency;
    tree["months"] = Json::array();
    for (const MonthInList& item : answer.months) {
        Json figures = figures_json(item.account);
        figures["closed"] = item.is_closed;
        figures["excess_value"] = item.excess_value.to_double();
        tree["months"].push_back(std::move(figures));
    }
    return document_text("months", tree);
}

}  // namespace flutebook::answers
