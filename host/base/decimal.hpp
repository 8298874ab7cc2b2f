// Numbers as people write them in a document: plain decimals, with a point or a comma; and the short decimal that a
// number is but for the last bits of a double.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace flutebook::base {

struct Decimal {
    double value;
    char mark;  // '.', ',' or 0 where there is none
};

/// Nothing for what another reader might take for another number: 010, 1e3, .5, 1 000, 1.000,5.
[[nodiscard]] std::optional<Decimal> read_decimal(std::string_view text);

/// The shortest text that reads back as the same number, with a point.
[[nodiscard]] std::string canonical(double value);

/// The decimal of at most twelve digits that lies within a few bits of `value`, else `value`: 25.400000000000002 is
/// 25.4, and 1/3 stays what it is.
[[nodiscard]] double short_decimal(double value);

}  // namespace flutebook::base
