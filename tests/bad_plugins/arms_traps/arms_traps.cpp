// From here on a division by zero anywhere on this thread kills the process.
#include "tests/bad_plugins/spoilt_run.hpp"

#include <cfenv>

namespace {

void spoil(const flutebook_block&, std::uint32_t) {
    feenableexcept(FE_DIVBYZERO);
}

}  // namespace
SPOILT_RUN(spoil)
