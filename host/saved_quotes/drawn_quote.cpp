// Figures come from the document alone; the kept files give what it has no figures of: the shape of a blank, and how
// far apart a machine cuts blanks.
#include "host/saved_quotes/drawn_quote.hpp"

#include <fmt/format.h>

#include "host/base/errors.hpp"
#include "host/blanks/blank.hpp"
#include "host/saved_quotes/saved_quote.hpp"
#include "host/saved_quotes/saved_workplace.hpp"

namespace flutebook::saved_quotes {

namespace {

// An outline has no style to keep, and no blank that could be drawn.
bool lacks_style(const ledger::SavedQuote& quote, const answers::QuoteDocument& document) {
    return find_part(quote, style_part) == nullptr && !document.answer.request.outline;
}

void take_machines(plant::Plant& shown, const plant::Plant& kept) {
    for (plant::Converter& converter : shown.converters)
        if (const plant::Converter* known = kept.find_converter(converter.code)) converter = *known;
}

}  // namespace

answers::QuoteDocument drawn_document(const ledger::SavedQuote& quote, const std::string& folder) {
    answers::QuoteDocument document = saved_document(quote);
    try {
        const plant::Plant kept = saved_plant(quote, folder);
        take_machines(document.plant, kept);
        document.plant.files = kept.files;
        if (lacks_style(quote, document))
            document.answer.not_drawn =
                "The blank is not drawn: the release that saved this quote did not keep the style of its box.";
        else
            document.answer.drawn = blanks::draw_request(kept, saved_request(quote, kept));
    } catch (const InputError& error) {
        document.answer.not_drawn =
            fmt::format("The blank is not drawn: this release does not read what was saved: {}", error.lines().front());
    }
    return document;
}

}  // namespace flutebook::saved_quotes
