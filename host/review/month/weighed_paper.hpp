// Paper weighed at a corrugator before anybody could tell its grade: wraps, butts and cores.
#pragma once

#include "host/review/month/workings.hpp"

namespace flutebook::review {

/// Shares every such loss among the papers by the kg that were issued of each (where none was: by what stood there,
/// else by what ran). Whole grams that add up to the loss.
void name_weighed_paper(Machine& machine);

}  // namespace flutebook::review
