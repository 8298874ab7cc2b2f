#include "host/engine/row.hpp"

#include "host/plant/machine_list.hpp"

namespace flutebook::engine {

std::size_t machine_index(const Row& row, std::size_t step) {
    const plant::Plant& plant = *row.order->plant;
    if (step == 0) return plant::machine_index(plant, *row.candidate->corrugator);
    const auto& converters = row.candidate->route->converters;
    if (step <= converters.size())
        return plant.corrugators.size() + static_cast<std::size_t>(converters[step - 1] - plant.converters.data());
    return plant.corrugators.size() + plant.converters.size();
}

// The sets' margin is that of each piece.
orders::OrderMargin margin_of(const Row& row) {
    const Order& order = *row.order;
    return orders::margin_of(*order.plant, *order.request, order.quantity / order.layout->piece.count);
}

}  // namespace flutebook::engine
