// Paper weighed at a corrugator before anybody could tell its grade: wraps, butts and cores.
#pragma once

#include "host/month/flows_by_account.hpp"

namespace flutebook::month {

/// Shares every such loss among the papers by the kg that were issued of each (where none was: by what stood there,
/// else by what ran). Whole grams that add up to the loss.
void name_weighed_paper(MachineFlows& machine);

}  // namespace flutebook::month
