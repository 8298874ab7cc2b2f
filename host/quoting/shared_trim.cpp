#include "host/quoting/shared_trim.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/answers/line_changes.hpp"

namespace flutebook::quoting {

namespace {

using answers::Quote;
using answers::RequestAnswer;

constexpr double much_trim = 3;  // times the share

// Of a set, the piece that leaves most.
double own_share(const RequestAnswer& answer, std::size_t index) {
    const auto share = [](const Quote& quote) { return quote.trim_mm / quote.roll_width_mm; };
    if (answer.quantities[index].quote) return share(*answer.quantities[index].quote);
    double result = 0;
    for (const RequestAnswer::Piece& piece : answer.pieces)
        result = std::max(result, share(*piece.quantities[index].quote));
    return result;
}

std::vector<double> quantities_of(const trim_answers::SharedTrim& trim, double own_share) {
    std::vector<double> result;
    for (const trim_answers::SharedTrim::Alone& item : trim.alone)
        if (item.own_share == own_share) result.push_back(item.quantity);
    return result;
}

}  // namespace

trim_answers::SharedTrim shared_trim(const RequestAnswer& answer, const RequestAnswer& alone) {
    trim_answers::SharedTrim result;
    result.policy = answer.request.trim;
    for (std::size_t i = 0; i < answer.quantities.size() && i < alone.quantities.size(); ++i)
        if (answer.quantities[i].is_makeable()) {
            const auto total = answers::total_of(alone.quantities[i]);
            result.alone.push_back({answer.quantities[i].quantity(),
                                    total ? std::optional(total->price_per_thousand) : std::nullopt,
                                    own_share(answer, i)});
        }
    return result;
}

std::vector<base::Warning> trim_warnings(const RequestAnswer& answer) {
    std::vector<base::Warning> result;
    std::vector<double> told;  // quantities of one layout are told of together
    for (const trim_answers::SharedTrim::Alone& item : answer.trim->alone) {
        const bool is_told = std::find(told.begin(), told.end(), item.own_share) != told.end();
        if (is_told || item.own_share <= much_trim * answer.trim->share()) continue;
        told.push_back(item.own_share);
        result.push_back(
            {base::place_text(answer.request.place),
             fmt::format("trim: at {} the layout trims {:.2f} % of its roll, and {:.2f} % are in the price: more than "
                         "three times as much; find a slit width or a roll that fits, or quote with `trim: alone`",
                         fmt::join(quantities_of(*answer.trim, item.own_share), ", "), item.own_share * 100,
                         answer.trim->share() * 100)});
    }
    return result;
}

}  // namespace flutebook::quoting
