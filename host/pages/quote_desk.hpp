// The quote desk, where an enquiry gets its price. GET /quotes/new.
#pragma once

#include <string>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/contract/model.hpp"
#include "host/pages/beside_panel.hpp"
#include "host/pages/desk_form.hpp"
#include "host/pages/desk_state.hpp"
#include "host/pages/frame.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::pages {

/// Refers to what outlives it.
struct QuoteDesk {
    const plant::Plant& plant;
    const std::vector<contract::Model>& models;
    DeskEnquiry enquiry;
    AnswerView view;                                 // with the address of desk_address()
    const answers::RequestAnswer* answer = nullptr;  // null: there is none
    BesideView beside = {};
    bool needs_approval = false;  // by a rule of the plant: whoever saves the answer must name who approves of it
};

/// Without a line: what may be typed, with three examples of this plant. With complaints: why there is no answer. With
/// an answer, its parts, and the form that saves it, where the person may.
[[nodiscard]] std::string quote_desk_page(const Frame& frame, const QuoteDesk& desk);

}  // namespace flutebook::pages
