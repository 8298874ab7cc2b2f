#include "host/saved_quotes/costed_again.hpp"

#include <fmt/format.h>

#include <utility>

#include "host/base/errors.hpp"
#include "host/quoting/quote.hpp"
#include "host/saved_quotes/changes.hpp"
#include "host/saved_quotes/saved_quote.hpp"
#include "host/saved_quotes/saved_workplace.hpp"

namespace flutebook::saved_quotes {

CostedAgain cost_again(const ledger::SavedQuote& quote, const std::string& folder,
                       const std::optional<std::string>& explain) {
    const answers::QuoteDocument document = saved_document(quote);
    workplace::Workplace then = open_saved(quote, folder);
    const orders::Request request = saved_request(quote, then.plant);
    answers::QuoteOptions asked = document.asked;
    if (explain) asked.explain = explain;
    answers::RequestAnswer again = quoting::quote(then.plant, then.engine, request, asked);
    bool is_same = !again.model_fault;
    for (const auto& quantity : changed_quantities(document.answer, &again)) is_same = is_same && !quantity.differs();
    if (!is_same)
        throw InputError(InputError::Whose::request,
                         {fmt::format("{0}: today's plugins make other figures of it: found them to differ, so what is "
                                      "worked out now would not be of this quote; look at what differs by "
                                      "/quotes/{0}/recheck",
                                      quote.number)});
    return {std::move(then), std::move(asked), std::move(again)};
}

}  // namespace flutebook::saved_quotes
