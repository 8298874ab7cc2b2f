#include "host/plant/trim_policy.hpp"

#include "host/base/quoted_text.hpp"

namespace flutebook::plant {

namespace {

constexpr const char* expected = "`alone`, `share`, or a map such as {share: 0.03, changes: 0.6}";
constexpr fields::QuantityRange some_changes{0, 10, false, "a number from 0 to 10"};

TrimPolicy read_numbers(fields::MapReader map) {
    TrimPolicy policy;
    policy.share = map.field("share").number("1", fields::range::share);
    if (map.has("changes")) policy.changes = map.field("changes").number("1", some_changes);
    map.finish();
    return policy;
}

}  // namespace

double TrimRecord::share() const {
    return board > Grams() ? static_cast<double>(side_trim.count()) / static_cast<double>(board.count()) : 0;
}

double TrimRecord::changes_per_order() const {
    return orders > 0 ? changes / static_cast<double>(orders) : 0;
}

double web_share(const TrimPolicy& policy, double used, double roll_width) {
    return policy.share ? used / (roll_width * (1 - *policy.share)) : 1;
}

AskedTrim read_asked_trim(const fields::Field& field) {
    AskedTrim result;
    if (field.is_map()) {
        result.way = AskedTrim::Way::by_numbers;
        result.numbers = read_numbers(fields::MapReader(field));
        return result;
    }
    const auto given = field.given_text(expected);
    if (given && given->text == "share") result.way = AskedTrim::Way::by_ledger;
    if (given && given->text != "alone" && given->text != "share")
        field.complain("unknown way to pay for trim: found " + base::shown(given->text) + ", expected " + expected);
    return result;
}

AskedTrim read_plant_trim(const fields::Field& field) {
    AskedTrim result = read_asked_trim(field);
    if (result.way == AskedTrim::Way::by_numbers) result.way = AskedTrim::Way::by_ledger;
    return result;
}

}  // namespace flutebook::plant
