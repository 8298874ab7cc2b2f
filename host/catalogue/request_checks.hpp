// Whether the plant can take up what a request asks for, each complaint at the field that asks.
#pragma once

#include <cstddef>
#include <vector>

#include "host/catalogue/form.hpp"
#include "host/catalogue/plant.hpp"
#include "host/catalogue/style.hpp"

namespace flutebook::catalogue {

/// The route must hold a machine that makes the style; an empty one makes only what needs no converter.
void check_route(const Field& field, const std::vector<std::size_t>& route, const Plant& plant, const Style& style);

/// A box needs the allowances of its board's flutes.
void check_allowance(const Field& field, const Plant& plant, const Board& board, const Style& style);

/// Every paper of the board must have a price on the day.
void check_prices(const Field& field, const Plant& plant, const Board& board, Date day);

}  // namespace flutebook::catalogue
