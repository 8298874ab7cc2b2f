#include "host/saved_quotes/costed_again.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "host/base/errors.hpp"
#include "host/quoting/quote.hpp"
#include "host/saved_quotes/changes.hpp"
#include "host/saved_quotes/saved_quote.hpp"
#include "host/saved_quotes/saved_workplace.hpp"

namespace flutebook::saved_quotes {

namespace {

// Where a trail holds at a step, its name of it says so: "step 1 FG1".
bool is_of_step(const explain::Trail& trail, std::int64_t step) {
    const std::string& where = trail.figures.front().where;
    return where.rfind("step ", 0) != 0 || where.rfind(fmt::format("step {} ", step), 0) == 0;
}

void keep_step(answers::RequestAnswer& answer, std::int64_t step) {
    const auto keep = [&](answers::RequestAnswer::Quantity& quantity) {
        if (quantity.quote)
            std::erase_if(quantity.quote->trails, [&](const auto& trail) { return !is_of_step(trail, step); });
    };
    for (answers::RequestAnswer::Quantity& quantity : answer.quantities) keep(quantity);
    for (answers::RequestAnswer::Piece& piece : answer.pieces)
        for (answers::RequestAnswer::Quantity& quantity : piece.quantities) keep(quantity);
}

}  // namespace

CostedAgain cost_again(const ledger::SavedQuote& quote, const std::string& folder,
                       const std::optional<ExplainedPart>& explain) {
    const answers::QuoteDocument document = saved_document(quote);
    workplace::Workplace then = open_saved(quote, folder);
    const orders::Request request = saved_request(quote, then.plant);
    answers::QuoteOptions asked = document.asked;
    if (explain) asked.explain = fmt::format("{}@{:.0f}", explain->figure, explain->quantity);
    answers::RequestAnswer again = quoting::quote(then.plant, then.engine, request, asked);
    bool is_same = !again.model_fault;
    for (const auto& quantity : changed_quantities(document.answer, &again)) is_same = is_same && !quantity.differs();
    if (!is_same)
        throw InputError(InputError::Whose::request,
                         {fmt::format("{0}: today's plugins give other figures: found differences, so a new sheet "
                                      "would not show this quote; see what differs at "
                                      "/quotes/{0}/recheck",
                                      quote.number)});
    if (explain && explain->step) keep_step(again, *explain->step);
    return {std::move(then), std::move(asked), std::move(again)};
}

}  // namespace flutebook::saved_quotes
