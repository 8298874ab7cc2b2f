// Whether the plant can take up what a request asks for, each complaint at the field that asks.
#pragma once

#include <cstddef>
#include <vector>

#include "host/orders/style.hpp"
#include "host/plant/plant.hpp"
#include "host/plant/yaml/map_reader.hpp"

namespace flutebook::orders {

/// The route must hold a machine that makes the style; an empty one makes only what needs no converter.
void check_route(const plant::Field& field, const std::vector<std::size_t>& route, const plant::Plant& plant,
                 const Style& style);

/// A box needs the allowances of its board's flutes.
void check_allowance(const plant::Field& field, const plant::Plant& plant, const plant::Board& board,
                     const Style& style);

/// Every paper of the board must have a price on the day.
void check_prices(const plant::Field& field, const plant::Plant& plant, const plant::Board& board, base::Date day);

}  // namespace flutebook::orders
