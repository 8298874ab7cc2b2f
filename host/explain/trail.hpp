// Behind a figure: one charged line walked down to settings, facts and the files they were written in.
//
// A model is a black box, but a pure one: an input that moves the figure stands behind it, one that does not is left
// out.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "host/base/place.hpp"
#include "host/engine/engine.hpp"

namespace flutebook::explain {

/// One number on the way down.
struct TracedFigure {
    enum class Kind { amount, provided, fact, setting };
    Kind kind;
    std::string name;   // "paper", "paper.issued", "starch.solids"
    std::string where;  // "ply 2 SC127", "step 1 FG1"; empty for a number of the whole order
    double value;
    std::string unit;
    std::string model;                // who computes or has it; empty for a fact
    std::string meaning;              // the sentence of its declaration; of a fact, how it was made
    std::vector<base::Place> places;  // of facts and settings: where they were written; none for a default
    std::vector<std::size_t> inputs;  // into Trail::figures: what moves it
};

/// As answers spell it: "fact".
[[nodiscard]] const char* to_text(TracedFigure::Kind kind);

/// figures[0] is the charged line. A figure that stands behind several others is there once.
struct Trail {
    std::vector<TracedFigure> figures;
    double quantity, rate;  // of the line, in its unit and in money per unit
};

/// The trail of every amount of `line` in a row that is costed. Throws ModelError.
[[nodiscard]] std::vector<Trail> explain(const engine::Engine& engine, const engine::Row& row, const std::string& line);

/// A number that stands behind what a row costs: where it was written, or the setting whose default it is.
struct TouchedNumber {
    base::Place place;
    std::string default_of;  // "starch.solids"; empty of what was written
};

/// Everything in the trails of all amounts of a row that is costed, each once. Throws ModelError.
[[nodiscard]] std::vector<TouchedNumber> touched_numbers(const engine::Engine& engine, const engine::Row& row);

}  // namespace flutebook::explain
