// Orders drawn at random that hang together as the host's facts do: sheets fit the roll, boxes fit the sheet, the
// board weighs what its plies weigh. From one box to ten million, from no waste to nearly nothing but waste.
#pragma once

#include "tests/support/model_bench.hpp"

namespace flutebook::fixture {

/// Call within a property: draws by RapidCheck. All facts that the ten models need but what other models provide.
[[nodiscard]] BenchRow any_order();

/// What the order ships, kg.
[[nodiscard]] double product_kg(const BenchRow& order);

/// A fact of the order axis.
[[nodiscard]] double number(const BenchRow& order, const std::string& name);

}  // namespace flutebook::fixture
