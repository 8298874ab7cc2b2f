#include "host/answers/variance.hpp"

namespace flutebook::answers {

Stages& Stages::operator+=(const Stages& other) {
    quoted += other.quoted;
    standard += other.standard;
    converted += other.converted;
    used += other.used;
    paid += other.paid;
    return *this;
}

Stages operator-(const Stages& left, const Stages& right) {
    return {left.quoted - right.quoted, left.standard - right.standard, left.converted - right.converted,
            left.used - right.used, left.paid - right.paid};
}

Variances variances_of(const Stages& stages) {
    return {stages.standard - stages.quoted, stages.converted - stages.standard, stages.used - stages.converted,
            stages.paid - stages.used};
}

std::optional<Stages> stages_of(const MaterialInput& input) {
    const auto quoted = Money::of(input.quoted, input.standard_price);
    const auto standard = Money::of(input.standard, input.standard_price);
    const auto converted = Money::of(input.allowed, input.standard_price);
    const auto used = Money::of(input.used, input.standard_price);
    const auto paid = Money::of(input.used, input.actual_price);
    if (!quoted || !standard || !converted || !used || !paid) return std::nullopt;
    return Stages{*quoted, *standard, *converted, *used, *paid};
}

}  // namespace flutebook::answers
