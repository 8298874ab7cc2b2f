// An enquiry in one line: `0201 400x300x250 B-140 500 1000 5000 2c 18%`.
//
// The form of each word tells its meaning, so words may come in any order: a style's code, inside sizes with an x
// between them, a board's code, quantities, colours (`2c`), the margin (`18%`), machines of the route, a day, and
// NAME=VALUE for a key of a request, a measure of the style, or a model's setting (`consumables.coverage=0.3`).
#pragma once

#include <string>

#include "host/base/date.hpp"
#include "host/base/yaml/node.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::orders {

/// What places name instead of a file; columns count in the line.
inline constexpr const char* enquiry_name = "enquiry";

/// The line as the tree of a request. Where it names no day it has `today`; where it gives no number, one that follows
/// from what it says. Throws InputError (request) with every word that says nothing here.
[[nodiscard]] base::Node read_enquiry(const plant::Plant& plant, const std::string& line, base::Date today);

/// What was understood, for a person to hold against what was meant: "style 0201, inside 400 x 300 x 250 mm, …".
[[nodiscard]] std::string enquiry_in_words(const base::Node& enquiry);

}  // namespace flutebook::orders
