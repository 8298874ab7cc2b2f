// A saved quote costed once more from the files that were kept with it, for what a quote needs and does not keep: its
// workbook, what is behind a figure of it.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "host/answers/quote_answer.hpp"
#include "host/workplace/workplace.hpp"
#include "ledger/reading/quotes.hpp"

namespace flutebook::saved_quotes {

struct CostedAgain {
    workplace::Workplace then;      // as it was kept, with today's plugins
    answers::QuoteOptions asked;    // as it was asked for, but for the figure that is explained
    answers::RequestAnswer answer;  // of the same figures as the saved one
};

/// A figure of it: at one quantity, and, where it holds at a step of making, at that step alone; nothing: at all.
struct ExplainedPart {
    std::string figure;
    double quantity;
    std::optional<std::int64_t> step;
};

/// `explain` is what is to be explained of it; `folder` is where the plant is today. Throws InputError (request) where
/// there is no such figure, and where today's plugins make other figures: then nothing can be told of the quote;
/// otherwise as open_saved().
[[nodiscard]] CostedAgain cost_again(const ledger::SavedQuote& quote, const std::string& folder,
                                     const std::optional<ExplainedPart>& explain);

}  // namespace flutebook::saved_quotes
