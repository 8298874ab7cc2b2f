// Evaluates a model over many rows, in blocks of any size, and checks the results of each row.
#pragma once

#include <cstddef>
#include <vector>

#include "host/plugin_check/rules.hpp"
#include "host/plugin_check/stage.hpp"
#include "host/plugin_check/trial_rows.hpp"

namespace flutebook::plugin_check {

/// The size of the engine's blocks, in rows.
inline constexpr std::size_t usual_block = engine::block_rows;

/// The group in parts of at most `size` rows, in order.
[[nodiscard]] std::vector<Group> cut(const Group& group, std::size_t size);

/// The group's rows, repeated until there are `size` rows.
[[nodiscard]] Group repeated(const Group& group, std::size_t size);

/// The capacity of a Stage for so many rows.
[[nodiscard]] std::size_t capacity_for(std::size_t rows);

/// Calls the model for one block; if it crashes, the report names the first row. Any thread.
Answer call(Stage& stage, const Group& block);

/// The results for each row of the group, in order, evaluated in blocks of at most `size`.
[[nodiscard]] std::vector<Written> evaluate(const contract::Model& model, const Group& group, std::size_t size);

/// How two results for the same row differ: "gave run.fed of step 2 as 3 and then as 4: generated order 3 ...". Nothing
/// where they have the same bits.
[[nodiscard]] Wrong difference(const contract::Model& model, const TrialRow& row, const Written& first,
                               const Written& second);

/// The call failed, or refused a row for a reason that is not declared.
[[nodiscard]] Wrong wrong_answer(const contract::Model& model, Stage& stage, const Group& block);
/// A result is not a number, or is infinite.
[[nodiscard]] Wrong wrong_number(const contract::Model& model, const TrialRow& row, const Written& written);
/// A result is outside its declared range.
[[nodiscard]] Wrong wrong_range(const contract::Model& model, const TrialRow& row, const Written& written);
/// The mass of a model that sheds does not balance.
[[nodiscard]] Wrong wrong_balance(const contract::Model& model, const TrialRow& row, const Written& written);

}  // namespace flutebook::plugin_check
