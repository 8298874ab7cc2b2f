// The one test that every number of a file goes through.
#include "host/plant/range.hpp"

#include <cmath>

namespace flutebook::plant {

bool QuantityRange::holds(double value) const {
    return value >= low && value <= high && (!is_whole || std::floor(value) == value);
}

}  // namespace flutebook::plant
