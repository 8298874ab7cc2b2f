// Numbers as people write them in a document: plain decimals, with a point or a comma.
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

}  // namespace flutebook::base
