// It declares that pieces fed are never below zero, and feeds fewer.
#include "tests/bad_plugins/spoilt_run.hpp"

namespace {

void spoil(const flutebook_block& block, std::uint32_t row) {
    spoilt::provided(block, "run.fed", 1, row) = -1;
}

}  // namespace
SPOILT_RUN(spoil)
