#include "host/answers/price_rules_json.hpp"

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>

namespace flutebook::answers {

namespace {

using RuleKind = PriceRule::Kind;

constexpr std::array rule_kinds{RuleKind::request_margin, RuleKind::customer_margin, RuleKind::quantity_margin,
                                RuleKind::round_up, RuleKind::least_order};
constexpr int all_decimals = 4;

Money money_in(const Json& amount) {
    return Money::rounded(amount.get<double>(), all_decimals).value();
}

RuleKind rule_kind_in(const Json& word) {
    const auto* found =
        std::find_if(rule_kinds.begin(), rule_kinds.end(), [&](RuleKind kind) { return word == to_text(kind); });
    if (found == rule_kinds.end()) throw Json::other_error::create(599, "unknown rule of a price", &word);
    return *found;
}

}  // namespace

const char* to_text(PriceRule::Kind kind) {
    switch (kind) {
        case RuleKind::request_margin:
            return "request-margin";
        case RuleKind::customer_margin:
            return "customer-margin";
        case RuleKind::quantity_margin:
            return "quantity-margin";
        case RuleKind::round_up:
            return "round-up";
        case RuleKind::least_order:
            return "least-order";
    }
    return "";
}

void add_price_making(Json& tree, const PriceMaking& making) {
    if (!making.rules.empty()) {
        Json rules = Json::array();
        for (const PriceRule& rule : making.rules)
            rules.push_back({{"rule", to_text(rule.kind)},
                             {"value", rule.value},
                             {"at", rule.at},
                             {"price_per_thousand", amount_json(rule.price_per_thousand)}});
        tree["price_rules"] = std::move(rules);
    }
    if (making.second)
        tree["second_currency"] = {{"code", making.second->currency},
                                   {"decimals", making.second->minor_units},
                                   {"rate", making.second->rate},
                                   {"price_per_thousand", amount_json(making.second->price_per_thousand)},
                                   {"order_value", amount_json(making.second->order_value)}};
}

PriceMaking price_making_in(const Json& tree) {
    PriceMaking result;
    if (tree.contains("price_rules"))
        for (const Json& json : tree.at("price_rules"))
            result.rules.push_back({rule_kind_in(json.at("rule")), json.at("value"), json.at("at"),
                                    money_in(json.at("price_per_thousand"))});
    if (tree.contains("second_currency")) {
        const Json& json = tree.at("second_currency");
        result.second = SecondPrice{json.at("code"), json.at("decimals"), json.at("rate"),
                                    money_in(json.at("price_per_thousand")), money_in(json.at("order_value"))};
    }
    return result;
}

void add_offer_terms(Json& tree, const RequestAnswer& answer) {
    const OfferTerms& terms = answer.terms;
    if (terms.valid_until) tree["valid_until"] = base::to_string(*terms.valid_until);
    if (terms.tolerance)
        tree["tolerance"] = {
            {"under", terms.tolerance->under}, {"over", terms.tolerance->over}, {"at", terms.tolerance_at}};
    if (answer.approval)
        tree["approval"] = {
            {"by", answer.approval->by}, {"below", answer.approval->below}, {"at", answer.approval->at}};
}

void read_offer_terms(const Json& tree, RequestAnswer& answer) {
    if (tree.contains("valid_until"))
        answer.terms.valid_until = base::parse_date(tree.at("valid_until").get_ref<const std::string&>());
    if (tree.contains("tolerance")) {
        const Json& json = tree.at("tolerance");
        plant::Tolerance tolerance;
        tolerance.under = json.at("under");
        tolerance.over = json.at("over");
        answer.terms.tolerance = tolerance;
        answer.terms.tolerance_at = json.at("at");
    }
    if (tree.contains("approval")) {
        const Json& json = tree.at("approval");
        answer.approval = Approval{json.at("by"), json.at("below"), json.at("at")};
    }
}

}  // namespace flutebook::answers
