// Rounds upwards from here on, and so would every sum of the host.
#include "tests/bad_plugins/spoilt_run.hpp"

#include <cfenv>

namespace {

void spoil(const flutebook_block&, std::uint32_t) {
    std::fesetround(FE_UPWARD);
}

}  // namespace
SPOILT_RUN(spoil)
