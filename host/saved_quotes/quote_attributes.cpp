#include "host/saved_quotes/quote_attributes.hpp"

#include <fmt/format.h>

#include <cmath>

#include "host/answers/quote_json.hpp"
#include "host/base/errors.hpp"
#include "host/saved_quotes/saved_quote.hpp"
#include "host/saved_quotes/saved_workplace.hpp"
#include "ledger/reading/records.hpp"

namespace flutebook::saved_quotes {

namespace {

using ledger::QuoteAttribute;

// What no attribute can be (a name with a control character) is not found by; the quote is saved all the same.
void add_words(std::vector<QuoteAttribute>& result, const char* name, const std::string& text) {
    if (!text.empty() && ledger::can_be_attribute(text)) result.push_back({name, text});
}

void add_size(std::vector<QuoteAttribute>& result, const orders::Request& request) {
    double length = 0, width = 0, height = 0;
    if (request.inside) {
        length = request.inside->length_mm;
        width = request.inside->width_mm;
        height = request.inside->height_mm;
    } else if (request.outline) {
        length = request.outline->length_mm;
        width = request.outline->width_mm;
    } else {
        return;
    }
    result.push_back({"length", to_micrometres(length)});
    result.push_back({"width", to_micrometres(width)});
    result.push_back({"height", to_micrometres(height)});
}

void add_price(std::vector<QuoteAttribute>& result, const char* name,
               const answers::RequestAnswer::Quantity& quantity) {
    if (quantity.set) result.push_back({name, quantity.set->price_per_thousand.ten_thousandths()});
    if (quantity.quote) result.push_back({name, quantity.quote->price_per_thousand.ten_thousandths()});
}

std::string texts_of_plant(const ledger::SavedQuote& quote) {
    std::string result;
    for (const ledger::QuotePart& part : quote.parts)
        if (part.name.rfind("plant/", 0) == 0 || part.name == style_part)
            result += fmt::format("{} {}\n{}", part.name, part.content.size(), part.content);
    return result;
}

}  // namespace

std::vector<QuoteAttribute> attributes_of(const plant::Plant& plant, const answers::RequestAnswer& answer) {
    const orders::Request& request = answer.request;
    std::vector<QuoteAttribute> result;
    add_words(result, "customer", request.customer);
    add_words(result, "style", request.style);
    if (request.board < plant.boards.size()) add_words(result, "board", plant.boards[request.board].code);
    add_size(result, request);
    std::vector<std::string> quantities;
    for (const auto& quantity : answer.quantities) quantities.push_back(fmt::format("{}", quantity.quantity()));
    add_words(result, "quantities", fmt::format("{}", fmt::join(quantities, " ")));
    if (!answer.quantities.empty()) {
        add_price(result, "price_first", answer.quantities.front());
        add_price(result, "price_last", answer.quantities.back());
    }
    add_words(result, "currency", plant.currency);
    result.push_back({"decimals", std::int64_t{plant.currency_minor_units}});
    add_words(result, "copied_from", request.copied_from);
    return result;
}

std::int64_t to_micrometres(double length_mm) {
    return std::llround(length_mm * 1000);
}

double to_millimetres(std::int64_t length_um) {
    return static_cast<double>(length_um) / 1000;
}

std::vector<QuoteAttribute> KeptAttributes::of(const ledger::SavedQuote& quote) {
    answers::QuoteDocument document = saved_document(quote);
    if (document.version > 0) return attributes_of(document.plant, document.answer);
    // Release 1.0.0 kept the figures without what a page says of the request.
    try {
        if (std::string texts = texts_of_plant(quote); !plant_ || texts != texts_of_plant_) {
            plant_ = saved_plant(quote, "");
            texts_of_plant_ = std::move(texts);
        }
        document.answer.request = saved_request(quote, *plant_);
        return attributes_of(*plant_, document.answer);
    } catch (const InputError&) {
        // This program no longer takes the kept files: the figures are what is left.
        return attributes_of(document.plant, document.answer);
    }
}

}  // namespace flutebook::saved_quotes
