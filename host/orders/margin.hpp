// The margin of an order, and where it was given.
#pragma once

#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::orders {

struct OrderMargin {
    enum class From { request, customer, quantity };
    From from;
    double share;  // of the price
    base::Place place;
};

/// The request's own, else the plant's for its customer, else the plant's for this many boxes or sets.
[[nodiscard]] OrderMargin margin_of(const plant::Plant& plant, const Request& request, double quantity);

}  // namespace flutebook::orders
