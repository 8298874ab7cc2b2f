// The figures of a quote as a list: each under the key that `quote --json` has for it, with its value and unit. Entries
// of lists count from 1: "waste_by_step[2].cost". The one place that names what a recheck compares.
#pragma once

#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/answers/recheck_answer.hpp"

namespace flutebook::answers {

/// All of a quote but its quantity and its cost lines, in the order of the document.
[[nodiscard]] std::vector<Leaf> figures_of(const Quote& quote);

/// The ways that were tried, and their limits.
[[nodiscard]] std::vector<Leaf> figures_of(const Unmakeable& unmakeable);

/// Of a document: the plant's name and currency.
[[nodiscard]] std::vector<Leaf> heading_figures(const plant::Plant& plant);

}  // namespace flutebook::answers
