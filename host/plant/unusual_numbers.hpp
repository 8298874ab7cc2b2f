// Numbers of the plant's files that are possible but unusual: a paper at 0.5 a tonne, a rate ten times the others', a
// roll 2 mm wide where `2,500` was written for 2500. Each gives a warning with its place.
#pragma once

#include <vector>

#include "host/base/place.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::plant {

/// What every usual range in money is multiplied by. Such ranges are meant in a currency worth about a euro or a
/// dollar: 1 for those; for any other currency, what the plant's papers cost beside what they cost there.
[[nodiscard]] double usual_money_scale(const Plant& plant);

/// Numbers outside what is usual, and those far from what the plant's other entries have; in the order of the files.
[[nodiscard]] std::vector<base::Warning> unusual_numbers(const Plant& plant);

/// The second kind alone, but for what is named already: prices of papers, and what an hour of a machine costs.
[[nodiscard]] std::vector<base::Warning> numbers_unlike_others(const Plant& plant,
                                                               const std::vector<base::Warning>& named);

/// The price of a paper that counts last; 0 where it has none.
[[nodiscard]] double newest_price(const Paper& paper);

/// The number in the middle; 0 of none.
[[nodiscard]] double median(std::vector<double> numbers);

}  // namespace flutebook::plant
