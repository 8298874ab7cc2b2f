// The numbers that stand behind a quote, by the paths under which they can be changed.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/scenario/number_trees.hpp"
#include "host/what_if/variant.hpp"

namespace flutebook::what_if {

/// Of the quantity at `index` of an answer that names what it touched, in the order of their names, each once. A board
/// stands for the numbers that it is made of; a roll width is changed for all papers, since a roll that one ply lacks
/// is none. Margin and colours are always among
/// them.
[[nodiscard]] std::vector<std::string> touched_paths(const Variant& base, const scenario::NumberTrees& trees,
                                                     const answers::RequestAnswer& answer, std::size_t index);

}  // namespace flutebook::what_if
