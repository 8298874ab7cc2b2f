// The web has no end.
#include "tests/bad_plugins/spoilt_run.hpp"

#include <limits>

namespace {

void spoil(const flutebook_block& block, std::uint32_t row) {
    spoilt::provided(block, "web.length", 0, row) = std::numeric_limits<double>::infinity();
}

}  // namespace
SPOILT_RUN(spoil)
