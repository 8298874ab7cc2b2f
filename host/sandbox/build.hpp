// Properties of this build that limits and deadlines depend on.
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

/// The factor by which every deadline is longer in this build.
inline constexpr int slowness = has_address_sanitizer ? 10 : 1;

}  // namespace flutebook::sandbox
