// A rechecked quote on the page, in the order a person in a hurry asks: does it still hold, what is the price now, what
// was changed, and then each figure that is not what it was.
#pragma once

#include <string>

#include "host/services/quoting/recheck.hpp"

namespace flutebook::reports {

[[nodiscard]] std::string recheck_text(const services::Recheck& checked);

}  // namespace flutebook::reports
