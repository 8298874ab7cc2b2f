// The figures of a quote as a list: each with its key in `quote --json`, its value and its unit. Entries of lists count
// from 1: "waste_by_step[2].cost". A recheck compares these figures and no others.
#pragma once

#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/answers/recheck_answer.hpp"

namespace flutebook::answers {

/// All figures of a quote except its quantity and its cost lines, in the order of the document.
[[nodiscard]] std::vector<Leaf> figures_of(const Quote& quote);

/// All figures of a quantity of a set except its quantity.
[[nodiscard]] std::vector<Leaf> figures_of(const SetQuote& set);

/// The ways that were tried, with the limit of each.
[[nodiscard]] std::vector<Leaf> figures_of(const Unmakeable& unmakeable);

/// The plant's name and currency.
[[nodiscard]] std::vector<Leaf> heading_figures(const plant::Plant& plant);

}  // namespace flutebook::answers
