// A production document before it is posted: its rows, what is wrong with each, what it would move, and the form that
// posts this very text. Answers POST /documents.
#pragma once

#include <string>

#include "host/month_answers/document_trial.hpp"
#include "host/pages/frame.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::pages {

/// `digest` names the text that was tried; the form stands there where it can be posted. `text` is what was sent, to be
/// mended in its form and sent again.
[[nodiscard]] std::string document_trial_page(const Frame& frame, const plant::Plant& plant,
                                              const answers::DocumentTrial& trial, const std::string& digest,
                                              const std::string& text);

}  // namespace flutebook::pages
