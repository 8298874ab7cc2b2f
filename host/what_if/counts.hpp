// Which numbers are counts, and so cannot change by a tenth: there is no 1.1 delivery.
#pragma once

#include <string_view>
#include <vector>

#include "host/contract/model.hpp"

namespace flutebook::what_if {

/// Whether the number at a path, as files write it without a unit, counts things. The host's own counts are known by
/// their paths. A setting has no word for it in its declaration, so it is taken for a count where everything that is
/// known of it is whole: its unit is "1", its range reaches beyond 1, and the ends of its range, those of what is
/// usual, its default and the value itself are whole numbers, the value at least 1. A share ends at 1, and 0 often
/// stands for "none", of which a tenth is moved.
[[nodiscard]] bool is_count(const std::vector<contract::Model>& models, std::string_view path, double value);

}  // namespace flutebook::what_if
