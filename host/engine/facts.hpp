// The facts of the host: every number that a model may need and that no model provides. One table, with unit, axis,
// range and meaning of each; the same table answers where a fact comes from.
#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "host/base/place.hpp"
#include "host/contract/model.hpp"
#include "host/engine/row.hpp"

namespace flutebook::engine {

/// Writes the fact's value at one axis index for each row: column[r] belongs to rows[r]. All rows have one shape.
using FillColumn = void (*)(std::span<const Row> rows, std::size_t index, double* column);

struct Fact {
    contract::Name name;
    bool is_replaceable;  // by a model that the plant prefers
    FillColumn fill;      // null for what other models charge: it is added up while a block is evaluated
};

[[nodiscard]] const std::vector<Fact>& facts();

/// The facts of what other models charge: by class, in the order of contract::CostClass, then their sum.
inline constexpr std::array<const char*, 6> cost_names = {"cost.material",         "cost.energy",   "cost.system",
                                                          "cost.waste-management", "cost.recovery", "cost.all"};

/// The place of a fact in facts(); its size where there is none of this name.
[[nodiscard]] std::size_t fact_index(std::string_view name);

/// Where a fact's value was written: the places in the plant's files or the request that it was made of, and how.
struct FactOrigin {
    std::string how;  // "given", "blank of style 0201 from the inside dimensions and the allowances of B"
    std::vector<base::Place> places;
    std::string choice = {};  // what the number stands for, where it is a choice: "folder-gluer"
};
[[nodiscard]] FactOrigin origin(const Fact& fact, const Row& row, std::size_t index);

}  // namespace flutebook::engine
