// The sheet "Quote": from cost to price, order value and profit, a column a quantity, by the rules that the plant has.
#pragma once

#include <string>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/plant/plant.hpp"
#include "host/workbooks/inputs_sheet.hpp"

namespace flutebook::workbooks {

/// The cells in "Inputs" that a price is made of.
struct LadderInputs {
    std::string margin;                    // of the request; empty where the plant's rules give it
    std::string round_up_to, least_order;  // empty where the plant has no such rule
    std::vector<std::string> quantities;   // by the request's quantities
};

/// Puts there what a ladder needs.
[[nodiscard]] LadderInputs add_ladder_inputs(const plant::Plant& plant, const answers::RequestAnswer& answer,
                                             InputsSheet& inputs);

/// `costs` holds for each of the request's quantities the formula of its cost, `='Cost 1'!$H$12`; empty where it cannot
/// be made.
[[nodiscard]] render::BookSheet ladder_sheet(const plant::Plant& plant, const answers::RequestAnswer& answer,
                                             const LadderInputs& inputs, const std::vector<std::string>& costs);

}  // namespace flutebook::workbooks
