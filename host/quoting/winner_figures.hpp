// Figures that are read from a costed row in addition to its costs: how long each machine is busy, and what the price
// may lack.
//
// A model is a black box, so what a request forgot is found from outside: each number that the request could have given
// and did not is moved, alone, in rows beside the row itself, in blocks that many rows share. A line that charges
// nothing in the row and something beside it is not in the price.
#pragma once

#include <span>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/engine/engine.hpp"

namespace flutebook::quoting {

struct WinnerFigures {
    std::vector<double> machine_hours;  // by step 0 .. K, setup and run; empty where no model says how long a run takes
    std::vector<answers::NotInPrice> not_in_price;
};

/// A row that was costed without a fault, and what it came to.
struct Winner {
    engine::Row row;
    const engine::Costing* costing;
};

/// Of each, in their order: what one comes to does not depend on the others. A number is moved to its low end, its high
/// end, 1 and the order's quantity; choices are not moved, and neither is what the plant's `pricing: {optional: [...]}`
/// names and the request does not. `bench` is the engine's.
[[nodiscard]] std::vector<WinnerFigures> winner_figures(const engine::Engine& engine, std::span<const Winner> winners);

}  // namespace flutebook::quoting
