// The answer to a request as parts of a page. Each has an id of its own, so that a script replaces it alone, and its
// place on the page even where there is nothing to say: #ladder, #missing, #watch, #limits, #layout, #box, #cost,
// #prices with #price and #ways, #masses with #mass, #run and #waste, #further, #pieces.
#pragma once

#include "host/answers/quote_answer.hpp"
#include "host/pages/desk_state.hpp"
#include "host/pages/markup.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::pages {

/// All parts in their order; `aside` stands beside the title of the first: "saved as Q000001".
[[nodiscard]] Html answer_parts(const plant::Plant& plant, const answers::RequestAnswer& answer, const AnswerView& view,
                                const Html& aside);

/// The short answer and the cost of the shown quantity, for a column beside another answer's; ids begin with `prefix`.
[[nodiscard]] Html beside_parts(const plant::Plant& plant, const answers::RequestAnswer& answer, const AnswerView& view,
                                const std::string& prefix);

/// The same parts, without anything in them: where there is no answer yet.
[[nodiscard]] Html empty_answer_parts();

/// "590.98 EUR a thousand at 1 000": what the page says when it has changed.
[[nodiscard]] std::string price_text(const plant::Plant& plant, const answers::RequestAnswer& answer,
                                     const AnswerView& view);

}  // namespace flutebook::pages
