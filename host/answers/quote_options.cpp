// A figure that is asked for by a text, taken apart: its name, and the quantity at which it is wanted.
#include <charconv>

#include "host/answers/quote_answer.hpp"

namespace flutebook::answers {

FigureAsked figure_asked(const std::string& text) {
    const std::size_t at = text.rfind('@');
    FigureAsked result{text.substr(0, at), std::nullopt, ""};
    if (at == std::string::npos) return result;
    result.behind = text.substr(at + 1);
    double quantity = 0;
    const char* const past = result.behind.data() + result.behind.size();
    const auto [end, failure] = std::from_chars(result.behind.data(), past, quantity);
    if (failure == std::errc() && end == past) result.quantity = quantity;
    return result;
}

bool explains_at(const QuoteOptions& asked, double quantity) {
    if (!asked.explain) return false;
    const FigureAsked figure = figure_asked(*asked.explain);
    return !figure.quantity || *figure.quantity == quantity;
}

}  // namespace flutebook::answers
