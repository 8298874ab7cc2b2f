// Plants and orders made from a seed, to try models with before a plant does: plausible ones, and among them the far
// ends of what is legal (no run waste or half of it, no roll loss, no trim, one sheet or ten million).
//
// Most orders can be made; about one in five fits nowhere. The same seed gives the same plant and order on every
// machine.
#pragma once

#include <cstdint>

#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::plugin_check {

struct MadeOrder {
    plant::Plant plant;
    orders::Request request;
};

/// 1 to 3 corrugators, up to 5 converters of every kind, boards of single face, single and double wall; one request
/// in any style, its route given (1 to 3 machines) or left out, 1 to 4 quantities. The plant lists no models.
[[nodiscard]] MadeOrder make_order(std::uint64_t seed);

}  // namespace flutebook::plugin_check
