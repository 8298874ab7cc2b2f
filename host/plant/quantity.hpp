// One number as a person writes it in a file: bare, in the unit that the key is known by, or a text with its own unit.
#pragma once

#include <string>
#include <variant>

#include "host/plant/model_settings.hpp"

namespace flutebook::plant {

/// `what is wrong, what was expected`, without the place.
struct Problem {
    std::string text;
};

/// The number of `given` in `unit`. Takes plain decimals only: no 010, nan, inf, 0x10, 1_000 or 1,5. In a text with a
/// unit the plant's `currency` code counts as `money`.
[[nodiscard]] std::variant<double, Problem> read_quantity(const GivenText& given, const std::string& unit,
                                                          const std::string& currency);

}  // namespace flutebook::plant
