#include "host/orders/margin.hpp"

namespace flutebook::orders {

OrderMargin margin_of(const plant::Plant& plant, const Request& request, double quantity) {
    using From = OrderMargin::From;
    if (request.margin) {
        const auto own = request.places.find("margin");
        return {From::request, *request.margin, own == request.places.end() ? request.place : own->second};
    }
    if (const auto* of_customer = plant.pricing.find_customer(request.customer))
        return {From::customer, of_customer->margin, of_customer->place};
    if (const auto* by_quantity = plant.pricing.find_margin(quantity))
        return {From::quantity, by_quantity->margin, by_quantity->place};
    // Never of a request that was read: without either it is refused.
    return {From::request, 0, request.place};
}

}  // namespace flutebook::orders
