// ownrun: lays out a run as the model `run` does, but for orders of 5000, where it strips a kilogram more off the
// rolls: a plant's own model in the place of `run`, for tests of what is said of its losses later.
#include "tests/bad_plugins/spoilt_run.hpp"

namespace {

void strip_more(const flutebook_block& block, std::uint32_t row) {
    spoilt::provided(block, "paper.issued", 0, row) += 1;
    spoilt::provided(block, "scrap.mass", 0, row) += 1;
    spoilt::lost(block, "roll-ends", 0, row) += 1;
}

flutebook_model renamed() {
    flutebook_model result = spoilt::run_with(&spoilt::evaluate<strip_more>);
    result.id = "ownrun";
    return result;
}

}  // namespace

extern "C" const flutebook_model flutebook_plugin = renamed();
