#include "host/services/orders/taken_order.hpp"

#include <fmt/format.h>

#include "host/orders/order_record_json.hpp"
#include "ledger/reading/quotes.hpp"

namespace flutebook::services {

namespace {

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
