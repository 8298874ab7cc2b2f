// The one test that every number of a file goes through.
#include "host/catalogue/range.hpp"

#include <cmath>

namespace flutebook::catalogue {

bool Range::holds(double value) const {
    return value >= low && value <= high && (!is_whole || std::floor(value) == value);
}

}  // namespace flutebook::catalogue
