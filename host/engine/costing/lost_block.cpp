#include "host/engine/costing/lost_block.hpp"

#include <fmt/format.h>

#include <optional>
#include <vector>

namespace flutebook::engine {
namespace {

// Rows of one order that lie one after another.
std::vector<contract::RowSpan> by_order(std::span<const Row> rows) {
    std::vector<contract::RowSpan> result;
    for (std::size_t r = 0; r < rows.size(); ++r) {
        if (r == 0 || rows[r].order != rows[r - 1].order) result.push_back({r, 0});
        ++result.back().count;
    }
    return result;
}

std::string quantity_of(const Order& order) {
    return fmt::format("{:.0f}", order.quantity);
}

// "R-1001 at 5000", or from the first order to the last.
std::string orders_of(const Order& first, const Order& last) {
    const std::string result = fmt::format("{} at {}", first.request->number, quantity_of(first));
    if (&first == &last) return result;
    if (first.request == last.request) return fmt::format("{} to {}", result, quantity_of(last));
    return fmt::format("{} to {} at {}", result, last.request->number, quantity_of(last));
}

Fault fault(const contract::Model& model, const contract::Failure& failure, std::span<const Row> rows,
            contract::RowSpan span) {
    return {span.first,
            fmt::format("{}: {} while it evaluated {}; ask its author, or remove it from plugins.yaml", model.where(),
                        failure.text, orders_of(*rows[span.first].order, *rows[span.first + span.count - 1].order))};
}

}  // namespace

Fault lost_block(const contract::Model& model, const flutebook_block& block, std::span<const Row> rows,
                 const contract::Failure& failure) {
    const std::vector<contract::RowSpan> orders = by_order(rows);
    if (orders.size() > 1)
        for (const contract::RowSpan order : orders)
            if (const auto again = model.elsewhere->evaluate(block, order);
                again && again->kind == contract::Failure::Kind::lost)
                return fault(model, *again, rows, order);
    return fault(model, failure, rows, {0, rows.size()});
}

}  // namespace flutebook::engine
