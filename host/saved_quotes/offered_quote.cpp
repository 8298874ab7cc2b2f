#include "host/saved_quotes/offered_quote.hpp"

#include "host/blanks/blank.hpp"
#include "host/saved_quotes/saved_quote.hpp"
#include "host/saved_quotes/saved_workplace.hpp"

namespace flutebook::saved_quotes {

OfferedQuote offered_quote(const ledger::SavedQuote& quote, const std::string& folder) {
    OfferedQuote result{saved_plant(quote, folder), saved_document(quote).answer};
    orders::Request request = saved_request(quote, result.plant);
    result.answer.drawn = blanks::draw_request(result.plant, request);
    if (request.outside) request.inside = blanks::inside_of(result.plant, request);
    result.answer.request = std::move(request);
    return result;
}

}  // namespace flutebook::saved_quotes
