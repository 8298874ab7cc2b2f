// The ways of all usual items go through the engine together, and only what is printed of each is worked out: what a
// sheet shows beside is not. An item of several pieces, one that needs a warning, and one that cannot be made, has the
// whole quote worked out, by the same code as a request's file.
#include "host/lists/list_costing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <memory>
#include <span>
#include <utility>

#include "host/base/errors.hpp"
#include "host/geometry/layout.hpp"
#include "host/lists/item_price.hpp"
#include "host/plant/maker_text.hpp"
#include "host/quoting/cost_sheet.hpp"
#include "host/quoting/formula_losses.hpp"
#include "host/quoting/offered_price.hpp"
#include "host/quoting/piece_quote.hpp"
#include "host/quoting/quote.hpp"
#include "host/quoting/style_warnings.hpp"
#include "host/quoting/winner_figures.hpp"

namespace flutebook::lists {

namespace {

using answers::ItemPrice;
using answers::PriceParts;
using workplace::Workplace;

std::string unmakeable_text(const orders::Request& request, const answers::Unmakeable& item) {
    std::string limits;
    for (const geometry::Refused& way : item.refused)
        limits += (limits.empty() ? "" : "; ") + way.candidate + ": " + way.limit;
    return fmt::format("{}: request {} at {:.0f}: it cannot be made: {}", base::place_text(request.place),
                       request.number, item.quantity, limits);
}

CostedItem answered(const answers::RequestAnswer& answer) {
    CostedItem result;
    result.warnings = answer.warnings;
    if (answer.model_fault) {
        result.state = CostedItem::State::unfit;
        result.errors.push_back(base::place_text(answer.request.place) + ": " + *answer.model_fault);
    } else if (!answer.is_complete()) {
        result.state = CostedItem::State::refused;
        result.errors.push_back(unmakeable_text(answer.request, *answer.quantities.front().unmakeable));
    } else {
        result.price = price_of(answer);
    }
    return result;
}

CostedItem cost_whole(const Workplace& workplace, const orders::Request& request) {
    CostedItem result;
    answers::QuoteOptions options;
    options.has_alone = false;  // a list has one price a row
    try {
        return answered(quoting::quote(workplace.plant, workplace.engine, request, options));
    } catch (const InputError& error) {
        result.state =
            error.whose() == InputError::Whose::plant ? CostedItem::State::unfit : CostedItem::State::refused;
        result.errors = error.lines();
    } catch (const ModelError& error) {
        result.state = CostedItem::State::unfit;
        result.errors = error.lines();
    }
    return result;
}

// An item with its ways, which stand together among the rows of all.
struct LaidOutItem {
    const orders::Request* request;
    std::unique_ptr<geometry::Layout> layout;
    std::unique_ptr<engine::Order> order;
    std::size_t first_row = 0;
};

// Nothing where the whole quote must be worked out.
std::optional<LaidOutItem> lay_out(const Workplace& workplace, const orders::Request& request) {
    if (request.outside || quoting::has_style_warning(workplace.plant, request)) return std::nullopt;
    LaidOutItem item{&request, nullptr, nullptr};
    try {
        item.layout = std::make_unique<geometry::Layout>(geometry::lay_out(workplace.plant, request));
        if (!item.layout->piece.name.empty() || item.layout->candidates.empty()) return std::nullopt;
        item.order = std::make_unique<engine::Order>(
            workplace.engine.order(workplace.plant, request, *item.layout, request.quantities.front()));
    } catch (const InputError&) {
        return std::nullopt;
    }
    return item.order->settings.unusual.empty() ? std::optional(std::move(item)) : std::nullopt;
}

// Nothing where every way is refused by a model.
std::optional<std::size_t> cheapest(const std::vector<engine::Outcome>& outcomes, const LaidOutItem& item) {
    const auto ways = std::span(outcomes).subspan(item.first_row, item.layout->candidates.size());
    const std::vector<std::size_t> ranked = quoting::ways_by_cost(ways);
    return ranked.empty() ? std::nullopt : std::optional(ranked.front());
}

std::string machines_of(const geometry::Candidate& way) {
    return plant::route_text(plant::maker_text(*way.corrugator), way.route_codes());
}

// Nothing where the whole quote must be worked out: its price is none that can be meant, or asks for a warning. What is
// not in the price is found for all items together.
std::optional<ItemPrice> price_of_way(const Workplace& workplace, const LaidOutItem& item, const engine::Row& row,
                                      const engine::Costing& costing) {
    const double quantity = item.order->quantity;
    if (!quoting::lost_otherwise_by(workplace.engine, row, costing).empty()) return std::nullopt;
    if (!(item.layout->blank.area_m2 * item.layout->board.grammage_gsm > 0)) return std::nullopt;
    const double thousand = costing.cost.to_double() / quantity * 1000;
    const auto cost = Money::rounded(thousand, 4);
    const auto price = quoting::offered_price(workplace.plant, *item.request, quantity, thousand);
    if (!cost || !price || *cost < Money{} || price->per_thousand < *cost) return std::nullopt;
    const auto sale =
        answers::order_profit(price->per_thousand, costing.cost, quantity, workplace.plant.currency_minor_units);
    if (!sale || workplace.plant.pricing.find_approval(sale->profit_share) != nullptr) return std::nullopt;
    ItemPrice result{};
    static_cast<PriceParts&>(result) =
        parts_of_price(engine::costs_by_class(workplace.engine.graph(), costing), quantity, *cost, price->per_thousand);
    result.order_value = sale->order_value;
    result.making = std::move(price->making);
    result.made_on = machines_of(*row.candidate);
    result.roll_width = fmt::format("{}", row.candidate->roll_width_mm);
    return result;
}

// Of items that were laid out; empty where a model was at fault in any.
std::vector<engine::Outcome> cost_rows(const Workplace& workplace, std::vector<std::optional<LaidOutItem>>& items) {
    std::vector<engine::Row> rows;
    for (auto& item : items) {
        if (!item) continue;
        item->first_row = rows.size();
        for (const geometry::Candidate& candidate : item->layout->candidates)
            rows.push_back({item->order.get(), &candidate});
    }
    try {
        return workplace.engine.cost(rows, 1);
    } catch (const ModelError&) {
        return {};
    }
}

// The rows that cost least, each of the item at the same place in `items`.
struct CheapestRows {
    std::vector<std::size_t> items;
    std::vector<engine::Row> rows;
};

CheapestRows cheapest_rows(const std::vector<engine::Outcome>& outcomes,
                           const std::vector<std::optional<LaidOutItem>>& items) {
    CheapestRows result;
    for (std::size_t i = 0; i < items.size() && !outcomes.empty(); ++i) {
        const auto way = items[i] ? cheapest(outcomes, *items[i]) : std::nullopt;
        if (!way) continue;
        result.items.push_back(i);
        result.rows.push_back({items[i]->order.get(), &items[i]->layout->candidates[*way]});
    }
    return result;
}

// Nothing where a model was at fault in any: the fault is told by the whole quote of its item.
std::vector<std::optional<engine::Costing>> cost_in_full(const Workplace& workplace,
                                                         const std::vector<engine::Row>& rows) {
    try {
        return workplace.engine.cost_in_full(rows);
    } catch (const ModelError&) {
        return std::vector<std::optional<engine::Costing>>(rows.size());
    }
}

void price_usual_items(const Workplace& workplace, std::vector<std::optional<LaidOutItem>>& items,
                       std::vector<CostedItem>& result) {
    const CheapestRows cheapest = cheapest_rows(cost_rows(workplace, items), items);
    const auto costings = cost_in_full(workplace, cheapest.rows);
    std::vector<quoting::Winner> winners;
    std::vector<ItemPrice*> prices;
    for (std::size_t c = 0; c < costings.size(); ++c) {
        if (!costings[c]) continue;
        const std::size_t i = cheapest.items[c];
        result[i].price = price_of_way(workplace, *items[i], cheapest.rows[c], *costings[c]);
        if (!result[i].price) continue;
        winners.push_back({cheapest.rows[c], &*costings[c]});
        prices.push_back(&*result[i].price);
    }
    std::vector<quoting::WinnerFigures> figures = quoting::winner_figures(workplace.engine, winners);
    for (std::size_t w = 0; w < figures.size(); ++w) prices[w]->not_in_price = std::move(figures[w].not_in_price);
}

}  // namespace

std::vector<CostedItem> cost_items(const Workplace& workplace, const std::vector<const orders::Request*>& requests) {
    std::vector<std::optional<LaidOutItem>> items;
    items.reserve(requests.size());
    for (const orders::Request* request : requests) items.push_back(lay_out(workplace, *request));
    std::vector<CostedItem> result(requests.size());
    price_usual_items(workplace, items, result);
    for (std::size_t i = 0; i < requests.size(); ++i)
        if (!result[i].price) result[i] = cost_whole(workplace, *requests[i]);
    return result;
}

}  // namespace flutebook::lists
