// The answer to a request as parts of a page, each with an id of its own, so that a script replaces it alone: #ladder,
// #missing, #watch, #limits, #layout, #box, #cost, #price, #ways, #run, #mass, #waste, #further, #pieces.
#pragma once

#include "host/answers/quote_answer.hpp"
#include "host/pages/desk_state.hpp"
#include "host/pages/markup.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::pages {

/// All parts in their order; `aside` stands beside the title of the first: "saved as Q000001".
[[nodiscard]] Html answer_parts(const plant::Plant& plant, const answers::RequestAnswer& answer, const AnswerView& view,
                                const Html& aside);

/// The same parts, without anything in them: where there is no answer yet.
[[nodiscard]] Html empty_answer_parts();

/// "590.98 EUR a thousand at 1 000": what the page says when it has changed.
[[nodiscard]] std::string price_text(const plant::Plant& plant, const answers::RequestAnswer& answer,
                                     const AnswerView& view);

}  // namespace flutebook::pages
