// The books balance, but only because setting the machine gives mass back.
#include "tests/bad_plugins/spoilt_run.hpp"

namespace {

void spoil(const flutebook_block& block, std::uint32_t row) {
    spoilt::lost(block, "rejects", 1, row) += 1000;
    spoilt::lost(block, "setup", 1, row) -= 1000;
}

}  // namespace
SPOILT_RUN(spoil)
