#include "host/plant/trim_policy.hpp"

#include "host/base/quoted_text.hpp"

namespace flutebook::plant {

namespace {

constexpr const char* expected = "`alone`, or a map such as {share: 0.03, changes: 0.6}";
constexpr fields::QuantityRange some_changes{0, 10, false, "a number from 0 to 10"};

TrimPolicy read_shared(fields::MapReader map) {
    TrimPolicy policy;
    policy.share = map.field("share").number("1", fields::range::share);
    if (map.has("changes")) policy.changes = map.field("changes").number("1", some_changes);
    map.finish();
    return policy;
}

}  // namespace

double web_share(const TrimPolicy& policy, double used, double roll_width) {
    return policy.share ? used / (roll_width * (1 - *policy.share)) : 1;
}

TrimPolicy read_trim_policy(const fields::Field& field) {
    if (field.is_map()) return read_shared(fields::MapReader(field));
    const auto given = field.given_text(expected);
    if (given && given->text != "alone")
        field.complain("unknown way to pay for trim: found " + base::shown(given->text) + ", expected " + expected);
    return {};
}

}  // namespace flutebook::plant
