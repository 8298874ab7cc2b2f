// Turns very small numbers into zero from here on, in every sum of this thread.
#include "tests/bad_plugins/spoilt_run.hpp"

#include <xmmintrin.h>

namespace {

void spoil(const flutebook_block&, std::uint32_t) {
    constexpr unsigned flush_and_treat_as_zero = 0x8040;
    _mm_setcsr(_mm_getcsr() | flush_and_treat_as_zero);
}

}  // namespace
SPOILT_RUN(spoil)
