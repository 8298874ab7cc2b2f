// A model evaluated over many rows, in any division into blocks; and what any one answer must be like.
#pragma once

#include <cstddef>
#include <vector>

#include "host/plugin_check/rules.hpp"
#include "host/plugin_check/stage.hpp"
#include "host/plugin_check/trial_rows.hpp"

namespace flutebook::plugin_check {

/// As many rows as the engine's own blocks have.
inline constexpr std::size_t usual_block = engine::block_rows;

/// A group cut into groups of at most `size`, in order.
[[nodiscard]] std::vector<Group> cut(const Group& group, std::size_t size);

/// The group's rows over and over until there are so many.
[[nodiscard]] Group repeated(const Group& group, std::size_t size);

/// How many rows a stage must have room for.
[[nodiscard]] std::size_t capacity_for(std::size_t rows);

/// Calls over one block; where the model is struck, its first row is named. Any thread.
Answer call(Stage& stage, const Group& block);

/// What the model wrote for each row of the group, in order, evaluated in blocks of at most `size`.
[[nodiscard]] std::vector<Written> evaluate(const contract::Model& model, const Group& group, std::size_t size);

/// How two answers for the same row differ, in the words of a rule: "gave another run.fed of step 2 for made order 3".
/// Nothing where they are the same to the bit.
[[nodiscard]] Wrong difference(const contract::Model& model, const TrialRow& row, const Written& first,
                               const Written& second);

/// The call was refused, or a row for a reason that is not declared.
[[nodiscard]] Wrong wrong_answer(const contract::Model& model, Stage& stage, const Group& block);
/// A result without a number, or infinite.
[[nodiscard]] Wrong wrong_number(const contract::Model& model, const TrialRow& row, const Written& written);
/// A result outside the range that was promised for it.
[[nodiscard]] Wrong wrong_range(const contract::Model& model, const TrialRow& row, const Written& written);
/// Mass that does not balance, of a model that sheds.
[[nodiscard]] Wrong wrong_balance(const contract::Model& model, const TrialRow& row, const Written& written);

}  // namespace flutebook::plugin_check
