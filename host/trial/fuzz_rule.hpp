// The rule of many orders made at random: what every rule asks of a few, with settings anywhere in their ranges.
#pragma once

#include "host/trial/rules.hpp"

namespace flutebook::trial {

/// Where it is broken, reports how many orders bring it out.
[[nodiscard]] Wrong try_many_orders(Subject& subject);

}  // namespace flutebook::trial
