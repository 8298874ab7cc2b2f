// The rule of many orders made at random: what every rule asks of a few, with settings anywhere in their ranges.
#pragma once

#include "host/plugin_check/rules.hpp"

namespace flutebook::plugin_check {

/// Where it is broken, reports how many orders bring it out.
[[nodiscard]] Wrong try_many_orders(Subject& subject);

}  // namespace flutebook::plugin_check
