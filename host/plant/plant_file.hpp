// Currencies by their ISO 4217 code, and the decimal places of their smallest coin.
#pragma once

#include <optional>
#include <string_view>

namespace flutebook::plant {

/// Decimal places of the currency's minor unit; nothing where the text is no code in force.
[[nodiscard]] std::optional<int> minor_units(std::string_view currency);

}  // namespace flutebook::plant
