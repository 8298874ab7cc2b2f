// Units of measure, by the udunits library with the trade's own names added: MSF (1000 ft2), MMBtu, lbs, kWh, box and
// sheet (both 1), and money, which stands for the plant's currency. The one file that touches udunits is units.cpp.
//
// Safe to call from any thread, one at a time inside. Meant for start-up and for showing results, not for sums.
#pragma once

#include <optional>
#include <string>

#include "host/fields/unit_words.hpp"

namespace flutebook::fields {

/// value in the new unit = scale x value in the old + offset.
struct Conversion {
    double scale = 1;
    double offset = 0;

    [[nodiscard]] double operator()(double value) const { return scale * value + offset; }
    [[nodiscard]] bool is_identity() const { return scale == 1 && offset == 0; }
};

/// Whether the text names a unit at all, in udunits spelling.
[[nodiscard]] bool is_unit(const std::string& text);

/// From one unit to another; nothing where their dimensions differ or a text is no unit.
[[nodiscard]] std::optional<Conversion> conversion(const std::string& from, const std::string& to);

/// The same two questions answered by the library alone, for the test of what is known without it.
[[nodiscard]] bool is_unit_of_library(const std::string& text);
[[nodiscard]] std::optional<Conversion> conversion_of_library(const std::string& from, const std::string& to);

/// Why a unit that a person wrote in a file is refused although the library would read it (a number or `since`
/// inside it, `kft2` which means (1000 ft)2, `ton` where it may be any of three); nothing where it may stand.
[[nodiscard]] std::optional<std::string> why_unit_is_refused(const std::string& text, const UnitWords& words = {});

}  // namespace flutebook::fields
