// The answer to a request as parts of a page. Each part has its own id, so that a script can replace it alone, and is
// on the page even if it is empty: #ladder, #missing, #watch, #limits, #layout, #box, #cost, #prices with #price and
// #ways, #masses with #mass, #run and #waste, #further, #pieces.
#pragma once

#include "host/answers/quote_answer.hpp"
#include "host/pages/desk_state.hpp"
#include "host/pages/markup.hpp"
#include "host/plant/plant.hpp"
#include "host/render/html_blocks.hpp"

namespace flutebook::pages {

/// What a page sets among the parts.
struct PartsAround {
    Html aside;                                // beside the title of the first: "saved as Q000001"
    Html below_ladder = {};                    // a part of its own
    const render::FigureWalk* ways = nullptr;  // leads from `way_figure(i)` to the i-th way that comes next
    Html deed = {};                            // what can be done with the price, in the head of the first
};

/// "way-1": how the first of the ways that come next is named to its walk.
[[nodiscard]] std::string way_figure(std::size_t index);

/// All parts in their order.
[[nodiscard]] Html answer_parts(const plant::Plant& plant, const answers::RequestAnswer& answer, const AnswerView& view,
                                const PartsAround& around);

/// The short answer and the cost of the shown quantity, for a column beside another answer's; ids begin with `prefix`.
[[nodiscard]] Html beside_parts(const plant::Plant& plant, const answers::RequestAnswer& answer, const AnswerView& view,
                                const std::string& prefix);

/// The same parts, without anything in them: where there is no answer yet.
[[nodiscard]] Html empty_answer_parts();

/// "590.98 EUR a thousand at 1 000": what the page says when it has changed.
[[nodiscard]] std::string price_text(const plant::Plant& plant, const answers::RequestAnswer& answer,
                                     const AnswerView& view);

}  // namespace flutebook::pages
