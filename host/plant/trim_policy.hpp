// Who pays for the side trim of a web: each order for that of its own roll, or all for what they leave on average.
#pragma once

#include <optional>

#include "host/fields/map_reader.hpp"

namespace flutebook::plant {

/// The part of a web, and of its order change, that an order pays.
struct TrimPolicy {
    /// The share of the combined board that is side trim on average: 0.03. Nothing: the order pays its own roll alone.
    std::optional<double> share = std::nullopt;
    /// Order changes that an order has on average: runs / orders. 1 where the order runs alone.
    double changes = 1;

    friend bool operator==(const TrimPolicy&, const TrimPolicy&) = default;
};

/// The part of the web that an order pays whose sheets take `used` of a roll's width, in the same unit. 1 where it runs
/// alone, above 1 where its own trim is less than the average:
///   used / (roll_width x (1 - share))
[[nodiscard]] double web_share(const TrimPolicy& policy, double used, double roll_width);

/// `alone`, or `{share: 0.03, changes: 0.6}` without `changes` for 1.
[[nodiscard]] TrimPolicy read_trim_policy(const fields::Field& field);

}  // namespace flutebook::plant
