// Traces a figure (a cost line, a sum, a mass or a length) down to settings, facts and the files that they were written
// in.
//
// A model is a black box, but a pure function: an input that changes the figure is one of its sources, one that does
// not is left out.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "host/base/place.hpp"
#include "host/engine/engine.hpp"
#include "host/explain/formula.hpp"

namespace flutebook::explain {

/// What a line charges at one place: quantity x rate.
struct Charge {
    double quantity, rate;  // in the line's unit, and in money per unit
    std::string unit;
};

/// One number on the way down.
struct TracedFigure {
    enum class Kind { amount, provided, fact, setting, formula };
    Kind kind;
    std::string name;   // "paper", "paper.issued", "starch.solids", "price"
    std::string where;  // "ply 2 SC127", "step 1 FG1"; empty for a number of the whole order
    double value;
    std::string unit;
    std::string model;                  // who computes or has it; empty for a fact and for a formula
    std::string meaning;                // the sentence of its declaration; of a fact, how it was made
    std::vector<base::Place> places;    // of facts and settings: where they were written; none for a default
    std::vector<std::size_t> inputs;    // into Trail::figures: what moves it
    std::optional<Charge> charge = {};  // of an amount
    std::string choice = {};            // what the number stands for, where it is a choice: "folder-gluer"
};

/// As answers spell it: "fact".
[[nodiscard]] const char* to_text(TracedFigure::Kind kind);

/// figures[0] is the figure that was asked for. A figure that stands behind several others is there once.
struct Trail {
    std::vector<TracedFigure> figures;
};

/// The trail of `figure` in a row that is costed, one for each place of its axis: of a line, a formula, a cause of
/// loss, a name that a model provides, a fact or a setting (`energy.power_price`), in that order. None of an amount or
/// a loss that is nothing. Throws ModelError.
[[nodiscard]] std::vector<Trail> explain(const engine::Engine& engine, const engine::Row& row,
                                         const std::string& figure, const std::vector<Formula>& formulas = {});

/// Every name that explain() knows without formulas.
[[nodiscard]] std::vector<std::string> figure_names(const engine::Engine& engine);

/// A number that stands behind what a row costs: where it was written, or the setting whose default it is.
struct TouchedNumber {
    base::Place place;
    std::string default_of;  // "starch.solids"; empty of what was written
};

/// Everything in the trails of all amounts of a row that is costed, each once. Throws ModelError.
[[nodiscard]] std::vector<TouchedNumber> touched_numbers(const engine::Engine& engine, const engine::Row& row);

}  // namespace flutebook::explain
