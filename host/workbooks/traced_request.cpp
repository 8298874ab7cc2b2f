#include "host/workbooks/traced_request.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/quoting/quote.hpp"

namespace flutebook::workbooks {

std::vector<CostSheet> cost_sheets(const answers::RequestAnswer& answer) {
    std::vector<CostSheet> result;
    for (std::size_t i = 0; i < answer.quantities.size(); ++i) {
        if (answer.quantities[i].quote)
            result.push_back({fmt::format("Cost {}", i + 1), "", i, 1, &*answer.quantities[i].quote});
        for (std::size_t p = 0; answer.quantities[i].set && p < answer.pieces.size(); ++p)
            result.push_back({fmt::format("Cost {} piece {}", i + 1, p + 1), answer.pieces[p].name, i,
                              answer.pieces[p].count, &*answer.pieces[p].quantities[i].quote});
    }
    return result;
}

const std::vector<explain::Trail>& TracedRequest::trails(const CostSheet& sheet, const std::string& figure) {
    if (by_figure_.count(figure) == 0) explain(figure);
    return by_figure_.at(figure)[sheet.name];
}

// The same request again, made the same way, with what this figure came from.
void TracedRequest::explain(const std::string& figure) {
    auto& by_sheet = by_figure_[figure];
    const std::vector<std::string> known = explain::figure_names(engine_);
    if (std::find(known.begin(), known.end(), figure) == known.end()) return;
    answers::QuoteOptions asked;
    asked.threads = asked_.threads;
    asked.way = asked_.way;
    asked.explain = figure;
    asked.has_alone = false;
    const answers::RequestAnswer again = quoting::quote(plant_, engine_, answer_.request, asked);
    for (const CostSheet& sheet : cost_sheets(again)) by_sheet[sheet.name] = sheet.quote->trails;
}

}  // namespace flutebook::workbooks
