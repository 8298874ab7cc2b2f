// Properties of this build that limits and deadlines depend on.
#pragma once

#include <cstddef>

namespace flutebook::sandbox {

#if defined(FLUTEBOOK_SANITIZED)
inline constexpr bool has_address_sanitizer = true;
#else
inline constexpr bool has_address_sanitizer = false;
#endif

/// The factor by which every deadline is longer in this build.
inline constexpr int slowness = has_address_sanitizer ? 10 : 1;

/// Bytes of freed memory that this build does not give back: AddressSanitizer keeps up to 256 MB to find late accesses.
inline constexpr std::size_t kept_when_freed = has_address_sanitizer ? std::size_t{256} << 20 : 0;

}  // namespace flutebook::sandbox
