// What this build is like, where a trial must know it.
#pragma once

namespace flutebook::sandbox {

#if defined(__SANITIZE_ADDRESS__)
inline constexpr bool has_address_sanitizer = true;
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
inline constexpr bool has_address_sanitizer = true;
#else
inline constexpr bool has_address_sanitizer = false;
#endif
#else
inline constexpr bool has_address_sanitizer = false;
#endif

/// How many times longer everything may take.
inline constexpr int slowness = has_address_sanitizer ? 10 : 1;

}  // namespace flutebook::sandbox
