// The margin of a price is found by quoting: a model may charge by the margin, so cost and margin move together.
#include "host/what_if/alternatives.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "host/answers/line_changes.hpp"
#include "host/base/errors.hpp"
#include "host/orders/margin.hpp"
#include "host/quoting/quote.hpp"
#include "host/what_if/request_on_board.hpp"
#include "host/what_if/variant.hpp"

namespace flutebook::what_if {

namespace {

using answers::RequestAnswer;
using orders::Request;
using what_if_answers::Alternative;

RequestAnswer quoted(const workplace::Workplace& workplace, const Request& request,
                     const answers::QuoteOptions& options) {
    RequestAnswer result = quoting::quote(workplace.plant, workplace.engine, request, options);
    if (result.model_fault) throw ModelError(*result.model_fault);
    return result;
}

Request at_margin(Request request, double margin, const std::string& place) {
    request.margin = margin;
    request.places.insert_or_assign("margin", {place, 0, 0});
    return request;
}

// One quantity at a price: the answer, and the margin that it was quoted at.
struct PricedQuantity {
    RequestAnswer answer;
    double margin;
};

PricedQuantity at_price(const workplace::Workplace& workplace, const Request& request, Money price,
                        const answers::QuoteOptions& options) {
    constexpr int most_turns = 100;
    constexpr double same_margin = 1e-12;
    const std::string place = fmt::format("--price {}", price.to_double());
    answers::QuoteOptions given = options;
    given.is_price_given = true;
    double margin = orders::margin_of(workplace.plant, request, request.quantities.front()).share;
    for (int turn = 0; turn < most_turns; ++turn) {
        RequestAnswer answer = quoted(workplace, at_margin(request, margin, place), given);
        const auto total = answers::total_of(answer.quantities.front());
        if (!total) return {std::move(answer), margin};
        const double cost = total->cost.to_double() / answer.quantities.front().quantity() * 1000;
        const double next = 1 - cost / price.to_double();
        if (std::abs(next - margin) < same_margin) return {std::move(answer), next};
        margin = next;
    }
    throw InputError(InputError::Whose::request,
                     {fmt::format("{}: no margin gives this price at {:.0f}: the cost moves with the margin; ask for "
                                  "a margin",
                                  place, request.quantities.front())});
}

void append(RequestAnswer& all, RequestAnswer one) {
    all.quantities.push_back(std::move(one.quantities.front()));
    for (std::size_t p = 0; p < one.pieces.size(); ++p)
        all.pieces[p].quantities.push_back(std::move(one.pieces[p].quantities.front()));
    for (base::Warning& warning : one.warnings)
        if (std::none_of(all.warnings.begin(), all.warnings.end(), [&](const base::Warning& known) {
                return known.at == warning.at && known.text == warning.text;
            }))
            all.warnings.push_back(std::move(warning));
}

// Every quantity has its own margin at the same price.
void answer_at_price(const workplace::Workplace& workplace, const Request& request, Alternative& item,
                     const answers::QuoteOptions& options) {
    for (const double quantity : request.quantities) {
        Request alone = request;
        alone.quantities = {quantity};
        PricedQuantity priced = at_price(workplace, alone, *item.price, options);
        item.margins.push_back(priced.margin);
        if (item.answer)
            append(*item.answer, std::move(priced.answer));
        else
            item.answer = std::move(priced.answer);
    }
    item.answer->request.quantities = request.quantities;
}

// What all alternatives have in common.
struct CommonGround {
    const workplace::Workplace& workplace;
    const Request& request;
    const base::Node* tree;  // what the request was read from; null: its file
};

Request on_board(const CommonGround& common, const std::string& board, const base::Place& place) {
    const plant::Plant& plant = common.workplace.plant;
    return common.tree == nullptr ? request_on_board(plant, common.request, board, place)
                                  : request_on_board(plant, common.request, *common.tree, board, place);
}

void answer(const CommonGround& common, Alternative& item, const answers::QuoteOptions& options) {
    const workplace::Workplace& workplace = common.workplace;
    Request own = common.request;
    if (item.board) own = on_board(common, *item.board, {"--board " + *item.board, 0, 0});
    if (item.price) return answer_at_price(workplace, own, item, options);
    if (item.margin) own = at_margin(std::move(own), *item.margin, fmt::format("--margin {}", *item.margin * 100));
    for (const double quantity : own.quantities)
        item.margins.push_back(orders::margin_of(workplace.plant, own, quantity).share);
    item.answer = quoted(workplace, own, options);
}

// The one place where an alternative's errors are caught: the others go on.
void answer_or_complain(const CommonGround& common, Alternative& item, const answers::QuoteOptions& options) {
    try {
        answer(common, item, options);
    } catch (const InputError& error) {
        item.answer.reset();
        item.complaints = error.lines();
    } catch (const ModelError& error) {
        item.answer.reset();
        item.complaints = error.lines();
    }
}

void refuse_broken_coins(const workplace::Workplace& workplace, const AskedAlternatives& asked) {
    const int decimals = workplace.plant.currency_minor_units;
    for (const Money price : asked.prices)
        if (Money::rounded(price.to_double(), decimals) != price)
            throw InputError(InputError::Whose::request,
                             {fmt::format("--price: no price in {}: found {}, expected at most {} decimals",
                                          workplace.plant.currency, price.to_double(), decimals)});
}

template <typename Value>
std::vector<std::optional<Value>> each_or_none(const std::vector<Value>& values) {
    if (values.empty()) return {std::nullopt};
    return {values.begin(), values.end()};
}

what_if_answers::Alternatives answer_all(const CommonGround& common, const AskedAlternatives& asked,
                                         const answers::QuoteOptions& options) {
    what_if_answers::Alternatives result{common.request, {}};
    for (const auto& board : each_or_none(asked.boards))
        for (const auto& margin : each_or_none(asked.margins))
            for (const auto& price : each_or_none(asked.prices)) {
                Alternative item{board, margin, price, std::nullopt, {}, {}};
                answer_or_complain(common, item, options);
                result.items.push_back(std::move(item));
            }
    return result;
}

}  // namespace

what_if_answers::Alternatives alternatives(const workplace::Workplace& workplace, const Request& request,
                                           const AskedAlternatives& asked,
                                           const std::vector<scenario::NumberChange>& changes,
                                           const answers::QuoteOptions& options) {
    refuse_broken_coins(workplace, asked);
    if (changes.empty()) return answer_all({workplace, request, nullptr}, asked, options);
    scenario::NumberTrees trees = trees_of(workplace, request);
    std::vector<what_if_answers::ChangedNumber> changed = change_all(trees, changes);
    const Variant variant = variant_of(workplace, request, trees);
    what_if_answers::Alternatives result =
        answer_all({variant.workplace, variant.request, &trees.request()}, asked, options);
    result.changed = std::move(changed);
    for (Alternative& item : result.items)
        if (item.answer) add_new_warnings(item.answer->warnings, variant.workplace.warnings, workplace.warnings);
    return result;
}

}  // namespace flutebook::what_if
