#include "host/contract/floating_point.hpp"

#include <cfenv>

#if defined(__x86_64__)
#include <xmmintrin.h>
#endif

namespace flutebook::contract {
namespace {

#if defined(__x86_64__)
constexpr std::uint32_t sticky_flags = 0x3f;  // of MXCSR
#endif

}  // namespace

FloatingPointGuard::Control FloatingPointGuard::read() {
#if defined(__x86_64__)
    std::uint16_t scalar = 0;
    __asm__ volatile("fnstcw %0" : "=m"(scalar));
    return {std::fegetround(), _mm_getcsr() & ~sticky_flags, scalar};
#else
    return {std::fegetround(), 0, 0};
#endif
}

FloatingPointGuard::FloatingPointGuard() : before_(read()) {}

FloatingPointGuard::~FloatingPointGuard() {
    if (read() == before_) return;
    std::fesetround(before_.rounding);
#if defined(__x86_64__)
    _mm_setcsr(before_.vector_unit);
    const auto scalar = static_cast<std::uint16_t>(before_.scalar_unit);
    __asm__ volatile("fldcw %0" : : "m"(scalar));
#endif
}

std::optional<std::string> FloatingPointGuard::change() const {
    const Control now = read();
    if (now == before_) return std::nullopt;
    if (now.rounding != before_.rounding) return "the rounding mode";
    return "the treatment of very small numbers or of traps";
}

}  // namespace flutebook::contract
