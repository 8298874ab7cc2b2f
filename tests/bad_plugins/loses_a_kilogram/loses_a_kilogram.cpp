// A kilogram of what the folder-gluer rejects is not shed.
#include "tests/bad_plugins/spoilt_run.hpp"

namespace {

void spoil(const flutebook_block& block, std::uint32_t row) {
    spoilt::lost(block, "rejects", 1, row) -= 1;
}

}  // namespace
SPOILT_RUN(spoil)
