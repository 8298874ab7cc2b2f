// The number of good pieces off the corrugator is left as it was handed over: no number.
#include "tests/bad_plugins/spoilt_run.hpp"

#include <limits>

namespace {

void spoil(const flutebook_block& block, std::uint32_t row) {
    spoilt::provided(block, "run.good", 0, row) = std::numeric_limits<double>::quiet_NaN();
}

}  // namespace
SPOILT_RUN(spoil)
