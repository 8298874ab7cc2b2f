// The corrugator sheds a kilogram of side trim that was never issued.
#include "tests/bad_plugins/spoilt_run.hpp"

namespace {

void spoil(const flutebook_block& block, std::uint32_t row) {
    spoilt::lost(block, "side-trim", 0, row) += 1;
}

}  // namespace
SPOILT_RUN(spoil)
