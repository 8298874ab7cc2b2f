// Handlers of the parts of a saved quote that have their own addresses: the drawing of its layout, and what is behind
// one of its figures.
#include <fmt/format.h>

#include "host/answers/quote_json.hpp"
#include "host/base/errors.hpp"
#include "host/offers/offer_drawings.hpp"
#include "host/pages/quote_line_page.hpp"
#include "host/render/svg.hpp"
#include "host/reports/layout_drawings.hpp"
#include "host/saved_quotes/costed_again.hpp"
#include "host/saved_quotes/offered_quote.hpp"
#include "host/saved_quotes/saved_quote.hpp"
#include "host/web/handlers.hpp"
#include "host/web/query_values.hpp"

namespace flutebook::web {

namespace {

using answers::RequestAnswer;
using reports::SheetContext;

constexpr std::int64_t most_steps = 100;

struct PartAsked {
    std::optional<double> quantity;    // nothing: the first that can be made
    std::optional<std::int64_t> step;  // nothing: all
};

PartAsked part_asked(const Call& call) {
    std::int64_t quantity = 0, step = 0;
    QueryValues values(call.target.query);
    values.take("quantity", cli::read_whole_number({"quantity", 1}, quantity));
    values.take("step", cli::read_whole_number({"step", 0, most_steps}, step));
    values.throw_if_any_is_wrong();
    PartAsked result;
    if (quantity > 0) result.quantity = static_cast<double>(quantity);
    if (!call.target.query.at("step").empty()) result.step = step;
    return result;
}

// Throws where the quote has no such quantity that can be made.
std::size_t quantity_index(const std::string& number, const RequestAnswer& answer, const PartAsked& asked) {
    std::vector<double> made;
    for (std::size_t i = 0; i < answer.quantities.size(); ++i) {
        const double quantity = answer.quantities[i].quantity();
        if (!answer.quantities[i].is_makeable()) continue;
        if (!asked.quantity || *asked.quantity == quantity) return i;
        made.push_back(quantity);
    }
    const std::string has = made.empty() ? "none" : reports::listed_quantities(made);
    throw InputError(InputError::Whose::request,
                     {fmt::format("quantity: {} has no such quantity with a price: found {}; it has {}", number,
                                  asked.quantity ? fmt::format("{:.0f}", *asked.quantity) : "none", has)});
}

// The quote of a box at a quantity, or of each piece of a set.
struct NamedQuote {
    std::string piece;  // empty of a box
    const answers::Quote* quote;
};

std::vector<NamedQuote> quotes_at(const RequestAnswer& answer, std::size_t index) {
    std::vector<NamedQuote> result;
    if (const auto& quote = answer.quantities[index].quote) result.push_back({"", &*quote});
    for (const RequestAnswer::Piece& piece : answer.pieces)
        if (const auto& quote = piece.quantities[index].quote) result.push_back({piece.name, &*quote});
    return result;
}

SheetContext context_of(const plant::Plant& plant, const RequestAnswer& answer) {
    return {plant, answer.request,
            answer.pieces.empty() ? SheetContext::Counted::boxes : SheetContext::Counted::pieces};
}

ledger::SavedQuote quote_asked(const Call& call) {
    return saved_quotes::saved_quote(opened_ledger(call), call.parts.front());
}

render::Drawings layout_drawings(const Call& call, const ledger::SavedQuote& quote) {
    const answers::QuoteDocument document = saved_quotes::saved_document(quote);
    const SheetContext context = context_of(document.plant, document.answer);
    render::Drawings result;
    for (const NamedQuote& item :
         quotes_at(document.answer, quantity_index(quote.number, document.answer, part_asked(call))))
        for (render::Drawing drawing :
             {reports::sheet_drawing(context, *item.quote), reports::web_drawing(context, *item.quote)}) {
            if (!item.piece.empty()) drawing.title = item.piece + ": " + drawing.title;
            result.items.push_back(std::move(drawing));
        }
    return result;
}

render::Drawings customers_drawings(const Call& call, const ledger::SavedQuote& quote) {
    const saved_quotes::OfferedQuote offered = saved_quotes::offered_quote(quote, call.plant().folder);
    if (offered.answer.drawn.empty())
        throw InputError(InputError::Whose::request,
                         {fmt::format("{}: has no drawing: {}", quote.number, offered.answer.not_drawn)});
    return offers::offer_drawings(offers::read_offer_words(offered.plant.folder), offered.answer.drawn);
}

std::string document_of(const saved_quotes::CostedAgain& again, const std::string& number) {
    answers::QuoteStream document(again.then.plant, again.then.warnings, again.asked);
    std::string text = document.begin();
    text += document.add(again.answer, number);
    return text + document.end();
}

}  // namespace

Outcome show_quote_drawing(const Call& call) {
    const ledger::SavedQuote quote = quote_asked(call);
    const bool is_offer = call.target.query.at("for") == "customer";
    Response response =
        picture(render::svg_file(is_offer ? customers_drawings(call, quote) : layout_drawings(call, quote)));
    response.headers.emplace_back("content-disposition",
                                  fmt::format("inline; filename=\"{}{}.svg\"", quote.number, is_offer ? "-offer" : ""));
    return response;
}

Outcome show_quote_line(const Call& call) {
    const PartAsked asked = part_asked(call);
    const ledger::SavedQuote quote = quote_asked(call);
    const answers::QuoteDocument kept = saved_quotes::saved_document(quote);
    const std::size_t index = quantity_index(quote.number, kept.answer, asked);
    const std::string& figure = call.parts.at(1);
    const saved_quotes::ExplainedPart part{figure, kept.answer.quantities[index].quantity(), asked.step};
    const saved_quotes::CostedAgain again = saved_quotes::cost_again(quote, call.plant().folder, part);
    if (call.wants_json()) return json(document_of(again, quote.number));
    return page(pages::quote_line_page(call.frame(pages::Place::quotes),
                                       {quote.number, again.then.plant, again.answer, index, figure}));
}

}  // namespace flutebook::web
