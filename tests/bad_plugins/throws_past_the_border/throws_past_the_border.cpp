// An exception leaves the function that the host calls: nothing here catches it.
#include "tests/bad_plugins/spoilt_run.hpp"

#include <stdexcept>

namespace {

void spoil(const flutebook_block&, std::uint32_t) {
    throw std::runtime_error("a run of bad luck");
}

}  // namespace
SPOILT_RUN(spoil)
