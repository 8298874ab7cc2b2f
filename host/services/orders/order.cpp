#include "host/services/orders/order.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "host/orders/order_record_json.hpp"
#include "host/production/document_format.hpp"
#include "host/services/quoting/saved_quote.hpp"
#include "ledger/reading/quotes.hpp"

namespace flutebook::services {

namespace {

orders::OrderRecord terms_in(const ledger::Store& store, const ledger::SavedQuote& quote, double quantity) {
    std::vector<std::string> held;
    for (const ledger::QuotePart& part : quote.parts)
        if (const auto terms =
                part.name.rfind("terms/", 0) == 0 ? orders::order_record_of(part.content) : std::nullopt) {
            if (terms->quantity == quantity) return *terms;
            held.push_back(fmt::format("{:.0f}", terms->quantity));
        }
    throw LedgerError(
        LedgerError::Kind::refused,
        fmt::format("{}: quote {} does not hold this quantity: found {}; take one of {}, or quote it anew",
                    store.file(), quote.number, quantity, fmt::join(held, ", ")));
}

// An order is only good for what can be posted to it.
void expect_postable(const ledger::Store& store, const std::string& number) {
    const bool is_stripped = number.front() != ' ' && number.back() != ' ';
    if (is_stripped && number.size() <= production::longest_name) return;
    throw LedgerError(
        LedgerError::Kind::refused,
        fmt::format("{}: the order's number is none that a document can name: found '{}'; give at most {} "
                    "bytes, no space at either end",
                    store.file(), number, production::longest_name));
}

// Machines that came after the order was taken are allowed what the plant allows them now.
void add_new_machines(orders::OrderRecord& order, const plant::Plant& plant) {
    for (const auto& corrugator : plant.corrugators)
        if (order.find_corrugator(corrugator.code) == nullptr)
            order.corrugators.push_back(
                {corrugator.code, corrugator.run_waste, corrugator.roll_loss, corrugator.order_change_m});
    for (const auto& converter : plant.converters)
        if (order.find_converter(converter.code) == nullptr)
            order.converters.push_back({converter.code, converter.kind, converter.run_waste, converter.setup_sheets});
}

}  // namespace

orders::OrderRecord take_order(ledger::Store& store, const OrderOptions& asked) {
    const ledger::SavedQuote quote = saved_quote(store, asked.quote);
    orders::OrderRecord result = terms_in(store, quote, asked.quantity);
    result.quote = quote.number;
    result.number = asked.number.empty() ? fmt::format("{}-{:.0f}", quote.number, result.quantity) : asked.number;
    expect_postable(store, result.number);
    ledger::take_order(store,
                       {result.number,
                        result.quote,
                        static_cast<std::int64_t>(result.quantity),
                        {{orders::order_record_part, orders::to_json(result)}}},
                       asked.who);
    return result;
}

std::optional<orders::OrderRecord> taken_order(const ledger::Store& store, const plant::Plant& plant,
                                               const std::string& number) {
    const auto saved = ledger::find_order(store, number);
    if (!saved) return std::nullopt;
    for (const auto& part : saved->order.parts)
        if (part.name == orders::order_record_part)
            if (auto order = orders::order_record_of(part.content)) {
                add_new_machines(*order, plant);
                return order;
            }
    throw LedgerError(
        LedgerError::Kind::unfit,
        fmt::format("{}: order {}: its record cannot be read; run `flutebook verify`", store.file(), number));
}

}  // namespace flutebook::services
