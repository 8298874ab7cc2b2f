// The units that people of the plant read: metric, or the trade's inches, feet, pounds and MSF. The sheet is written
// once, in the host's own units, and every number is converted here when it is shown.
//
// Answers for machines (--json) never do: they are metric for every plant.
#pragma once

#include <string>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::drawings {

/// How one kind of number is shown.
struct ShownUnit {
    std::string name;
    double scale;  // from the host's unit
    int decimals;

    [[nodiscard]] double operator()(double value) const { return value * scale; }
    /// "1 234.5 kg".
    [[nodiscard]] std::string text(double value) const;
};

/// Constant; made once for a plant.
struct ShownUnits {
    explicit ShownUnits(const plant::Plant& plant);

    plant::Units units;
    std::string currency;
    std::string length_unit;  // "mm", "in"
    ShownUnit web_length;     // from m
    ShownUnit area;           // from m2, of one box
    ShownUnit mass;           // from kg
    ShownUnit grammage;       // from g/m2
    ShownUnit cost_area;      // from m2: the area that a cost is told for
    ShownUnit cost_mass;      // from tonnes: the mass that a cost is told for

    /// Of a box, its blank or its sheet: "2050 mm"; "15 1/4 in", rounded to sixteenths, "~80 11/16 in" where it was.
    [[nodiscard]] std::string length(double length_mm) const;
    /// The same without its unit.
    [[nodiscard]] std::string length_number(double length_mm) const;
    /// Of a machine or a roll, or to be measured again: not rounded to sixteenths, "80.709 in".
    [[nodiscard]] std::string exact_length(double length_mm) const;

    /// "400 x 300 x 250 mm".
    [[nodiscard]] std::string lengths(const std::vector<double>& lengths_mm) const;

    /// For the unit of a model's line or figure; a unit that people of both worlds use stays as it is. `money` in it
    /// becomes the currency, and 1 goes without a name.
    [[nodiscard]] ShownUnit of(const std::string& unit) const;

    /// Cost per m2 and per tonne shipped, or per MSF and per short ton.
    [[nodiscard]] Money cost_per_area(const answers::Quote& quote) const;
    [[nodiscard]] Money cost_per_mass(const answers::Quote& quote) const;
};

}  // namespace flutebook::drawings
