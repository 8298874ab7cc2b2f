#include "host/what_if/compare.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "host/answers/line_changes.hpp"
#include "host/answers/made_on.hpp"
#include "host/base/errors.hpp"
#include "host/quoting/quote.hpp"
#include "host/what_if/variant.hpp"

namespace flutebook::what_if {

namespace {

using answers::RequestAnswer;
using what_if_answers::QuantityBeside;

std::string made_on(const RequestAnswer::Quantity& quantity) {
    return quantity.quote ? answers::route_text(*quantity.quote) : "";
}

QuantityBeside beside(const RequestAnswer::Quantity& was, const RequestAnswer::Quantity& now, std::string piece) {
    QuantityBeside result{was.quantity(),
                          std::move(piece),
                          answers::total_of(was),
                          answers::total_of(now),
                          made_on(was),
                          made_on(now),
                          {},
                          {}};
    if (was.quote && now.quote) result.lines = answers::lines_beside(*was.quote, *now.quote);
    for (const auto* side : {&was, &now})
        if (side->unmakeable && result.limits.empty())
            for (const geometry::Refused& way : side->unmakeable->refused)
                result.limits.push_back(fmt::format("{}: {}", way.candidate, way.limit));
    return result;
}

RequestAnswer answered(const workplace::Workplace& workplace, const orders::Request& request,
                       const answers::QuoteOptions& asked) {
    RequestAnswer result = quoting::quote(workplace.plant, workplace.engine, request, asked);
    if (result.model_fault) throw ModelError(*result.model_fault);
    return result;
}

std::vector<QuantityBeside> all_beside(const RequestAnswer& was, const RequestAnswer& now) {
    std::vector<QuantityBeside> result;
    for (std::size_t i = 0; i < was.quantities.size(); ++i) {
        result.push_back(beside(was.quantities[i], now.quantities[i], ""));
        for (std::size_t p = 0; p < was.pieces.size(); ++p)
            result.push_back(beside(was.pieces[p].quantities[i], now.pieces[p].quantities[i], was.pieces[p].name));
    }
    return result;
}

}  // namespace

what_if_answers::WhatIf compare(const workplace::Workplace& workplace, const orders::Request& request,
                                const std::vector<NumberChange>& changes, const answers::QuoteOptions& asked) {
    what_if_answers::WhatIf result{request, {}, {}, {}};
    scenario::NumberTrees trees = trees_of(workplace, request);
    result.changed = change_all(trees, changes);
    const Variant changed = variant_of(workplace, request, trees);
    const RequestAnswer was = answered(workplace, request, asked);
    const RequestAnswer now = answered(changed.workplace, changed.request, asked);
    result.quantities = all_beside(was, now);
    add_new_warnings(result.warnings, changed.workplace.warnings, workplace.warnings);
    add_new_warnings(result.warnings, now.warnings, was.warnings);
    return result;
}

what_if_answers::WhatIf compare_ways(const workplace::Workplace& workplace, const orders::Request& request,
                                     const answers::QuoteOptions& asked) {
    what_if_answers::WhatIf result{request, {}, {}, {}};
    answers::QuoteOptions any_way = asked;
    any_way.way = {};
    const RequestAnswer was = answered(workplace, request, any_way);
    const RequestAnswer now = answered(workplace, request, asked);
    result.quantities = all_beside(was, now);
    add_new_warnings(result.warnings, now.warnings, was.warnings);
    return result;
}

}  // namespace flutebook::what_if
