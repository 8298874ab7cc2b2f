#include "host/services/orders/taken_order.hpp"

#include <fmt/format.h>

#include "host/orders/order_record_json.hpp"
#include "ledger/reading/quotes.hpp"

namespace flutebook::services {

namespace {

// Machines that came after the order was taken are allowed what the plant allows them now.
void add_new_machines(orders::OrderRecord& order, const plant::Plant& plant) {
    for (const auto& own : plant.corrugators)
        if (order.find_corrugator(own.code) == nullptr)
            order.corrugators.push_back({own.code, own.run_waste, own.roll_loss, own.order_change_m});
    for (const auto& own : plant.converters)
        if (order.find_converter(own.code) == nullptr)
            order.converters.push_back({own.code, own.kind, own.run_waste, own.setup_sheets});
}

}  // namespace

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
