// What a plugin takes, as figures: told, never judged, since they are of one machine on one day.
#pragma once

#include "host/plugin_check/subject.hpp"

namespace flutebook::plugin_check {

/// Reports how long loading took and what a row costs in full blocks, in the open. For a model that answers.
void measure(Subject& subject);

}  // namespace flutebook::plugin_check
