// The model `run` as it is built for the host, wrong in one thing: what all plugins here that lay out a run share.
//
// Each of them is a library of its own that holds the good model under the name `good_run`, calls it, and then spoils
// the unlucky rows. Orders of any other quantity come out right.
#pragma once

#include <flutebook/plugin.h>

#include <cstddef>
#include <cstdint>
#include <string_view>

extern "C" const flutebook_model good_run;

namespace spoilt {

constexpr double unlucky = 5000;

// Where a name stands in a list of names; one past the end where it does not.
inline std::uint32_t place_of(const flutebook_span& names, std::string_view wanted) {
    const auto* first = static_cast<const flutebook_name*>(names.at);
    std::uint32_t place = 0;
    while (place < names.count && first[place].name != wanted) ++place;
    return place;
}

/// A number that the good model has just written, to be written over.
inline double& provided(const flutebook_block& block, std::string_view name, std::size_t index, std::uint32_t row) {
    return block.provides[place_of(good_run.provides, name)][index * block.pitch + row];
}

// Where a cause stands among the good model's losses; one past the end where it does not.
inline std::uint32_t place_of_cause(std::string_view wanted) {
    const auto* first = static_cast<const flutebook_loss*>(good_run.losses.at);
    std::uint32_t place = 0;
    while (place < good_run.losses.count && first[place].cause != wanted) ++place;
    return place;
}

/// kg under a cause, at a step.
inline double& lost(const flutebook_block& block, std::string_view cause, std::size_t step, std::uint32_t row) {
    return block.losses[place_of_cause(cause)][step * block.pitch + row];
}

template <void (*Spoil)(const flutebook_block& block, std::uint32_t row)>
std::uint32_t evaluate(const flutebook_block* block) {
    const std::uint32_t answer = good_run.evaluate(block);
    const double* quantity = block->needs[place_of(good_run.needs, "order.quantity")];
    for (std::uint32_t row = 0; row < block->rows; ++row)
        if (quantity[row] == unlucky) Spoil(*block, row);
    return answer;
}

inline flutebook_model run_with(std::uint32_t (*evaluate)(const flutebook_block*)) {
    flutebook_model result = good_run;
    result.evaluate = evaluate;
    return result;
}

}  // namespace spoilt

#define SPOILT_RUN(spoil) \
    extern "C" const flutebook_model flutebook_plugin = spoilt::run_with(&spoilt::evaluate<spoil>);
