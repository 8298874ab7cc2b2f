// Which inputs of a model change which of its results: each input is changed a little, alone, and the model evaluated
// again.
#pragma once

#include <cstddef>
#include <map>
#include <set>
#include <utility>
#include <vector>

#include "host/engine/costing/blocks.hpp"

namespace flutebook::explain {

/// One number that a model takes: a need or a setting, at one axis index.
struct ModelInput {
    bool is_setting;
    std::size_t at, index;
};

/// One number that a model gives: a column and an axis index.
using ModelResult = std::pair<engine::Slot, std::size_t>;

/// The inputs behind the results of one row. Works in columns of its own, so that those of the row stay as they are,
/// and evaluates a model once for all its results.
class Movers {
public:
    /// `blocks` and `row` must outlive it.
    Movers(const engine::Blocks& blocks, const engine::Row& row);

    /// The inputs that move any of these results of a model when they move alone, in the order of its declaration.
    /// Throws ModelError where the model is at fault at a number in the range that it declares.
    [[nodiscard]] std::vector<ModelInput> of(std::size_t model, const std::vector<ModelResult>& results);

private:
    struct MovedResults {
        ModelInput input;
        std::set<ModelResult> results;
    };

    [[nodiscard]] const std::vector<MovedResults>& all_of(std::size_t model);
    [[nodiscard]] std::vector<MovedResults> try_all(std::size_t model) const;
    [[nodiscard]] contract::Range range_of(std::size_t model, const ModelInput& input) const;

    const engine::Blocks& blocks_;
    const engine::Row& row_;
    std::map<std::size_t, std::vector<MovedResults>> by_model_;
};

}  // namespace flutebook::explain
