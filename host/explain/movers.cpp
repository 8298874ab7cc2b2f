#include "host/explain/movers.hpp"

#include <algorithm>

#include "host/base/errors.hpp"

namespace flutebook::explain {

namespace {

using engine::Columns;
using engine::Slot;

// Every result of a model that a figure can be, with its number.
std::vector<std::pair<ModelResult, double>> results_of(const Columns& columns, const engine::ModelSlots& slots) {
    std::vector<std::pair<ModelResult, double>> result;
    for (const auto* list : {&slots.provides, &slots.quantities, &slots.rates, &slots.losses})
        for (const Slot slot : *list)
            for (std::size_t i = 0; i < columns.extent(slot); ++i)
                result.push_back({{slot, i}, *columns.column(slot, i)});
    return result;
}

}  // namespace

Movers::Movers(const engine::Blocks& blocks, const engine::Row& row) : blocks_(blocks), row_(row) {}

std::vector<ModelInput> Movers::of(std::size_t model, const std::vector<ModelResult>& results) {
    std::vector<ModelInput> result;
    for (const MovedResults& moved : all_of(model))
        if (std::any_of(results.begin(), results.end(),
                        [&](const ModelResult& wanted) { return moved.results.contains(wanted); }))
            result.push_back(moved.input);
    return result;
}

const std::vector<Movers::MovedResults>& Movers::all_of(std::size_t model) {
    const auto known = by_model_.find(model);
    return known != by_model_.end() ? known->second : by_model_.emplace(model, try_all(model)).first->second;
}

std::vector<Movers::MovedResults> Movers::try_all(std::size_t model) const {
    Columns columns = blocks_.columns_of(row_);
    const engine::ModelSlots& slots = blocks_.slots().models[model];
    const auto before = results_of(columns, slots);
    std::vector<MovedResults> result;
    const auto move = [&](const ModelInput& input, double& number) {
        const double here = number;
        const auto [low, high] = range_of(model, input);
        MovedResults moved{input, {}};
        for (const double wanted : {here * 1.001, here + 1, here - 1, here * 1.5, here / 2, low, high}) {
            number = std::clamp(wanted, low, high);
            if (number == here) continue;
            if (auto fault = blocks_.call(columns, model, 1)) throw ModelError(fault->text);
            for (const auto& [at, value] : before)
                if (*columns.column(at.first, at.second) != value) moved.results.insert(at);
        }
        number = here;
        if (!moved.results.empty()) result.push_back(std::move(moved));
    };
    const auto move_each = [&](bool is_setting, const std::vector<Slot>& from) {
        for (std::size_t at = 0; at < from.size(); ++at)
            for (std::size_t i = 0; i < columns.extent(from[at]); ++i)
                move({is_setting, at, i}, *columns.column(from[at], i));
    };
    move_each(false, slots.needs);
    move_each(true, slots.settings);
    return result;
}

contract::Range Movers::range_of(std::size_t model, const ModelInput& input) const {
    const contract::Model& declared = blocks_.graph().models[model];
    if (input.is_setting) return declared.settings[input.at].range;
    const contract::Name& need = declared.needs[input.at];
    // A model may use it to find a column: it must stay a step of this route.
    if (need.name == "step.parting") return {0, static_cast<double>(row_.steps() - 2)};
    return need.range;
}

}  // namespace flutebook::explain
