// Evaluates a model over many rows, in blocks of any size, and checks the results of each row.
#pragma once

#include <cstddef>
#include <vector>

#include "host/plugin_check/rules.hpp"
#include "host/plugin_check/trial_block.hpp"
#include "host/plugin_check/trial_rows.hpp"

namespace flutebook::plugin_check {

/// The size of the engine's blocks, in rows.
inline constexpr std::size_t usual_block = engine::block_rows;

/// The group in parts of at most `size` rows, in order.
[[nodiscard]] std::vector<Group> cut(const Group& group, std::size_t size);

/// The group's rows, repeated until there are `size` rows.
[[nodiscard]] Group repeated(const Group& group, std::size_t size);

/// The capacity of a TrialBlock for so many rows.
[[nodiscard]] std::size_t capacity_for(std::size_t rows);

/// Calls the model for one block; if it crashes, the report names the first row. Any thread.
CallOutcome call(TrialBlock& trial_block, const Group& block);

/// The results for each row of the group, in order, evaluated in blocks of at most `size`.
[[nodiscard]] std::vector<RowOutput> evaluate(const contract::Model& model, const Group& group, std::size_t size);

/// How two results for the same row differ: "gave run.fed of step 2 as 3 and then as 4: generated order 3 ...". Nothing
/// where they have the same bits.
[[nodiscard]] Violation difference(const contract::Model& model, const TrialRow& row, const RowOutput& first,
                                   const RowOutput& second);

/// The call failed, or refused a row for a reason that is not declared.
[[nodiscard]] Violation wrong_answer(const contract::Model& model, TrialBlock& trial_block, const Group& block);
/// A result is not a number, or is infinite.
[[nodiscard]] Violation wrong_number(const contract::Model& model, const TrialRow& row, const RowOutput& written);
/// A result is outside its declared range.
[[nodiscard]] Violation wrong_range(const contract::Model& model, const TrialRow& row, const RowOutput& written);
/// The mass of a model that sheds does not balance.
[[nodiscard]] Violation wrong_balance(const contract::Model& model, const TrialRow& row, const RowOutput& written);

/// A recovery adds to the cost.
[[nodiscard]] Violation wrong_recovery(const contract::Model& model, const TrialRow& row, const RowOutput& written);

}  // namespace flutebook::plugin_check
