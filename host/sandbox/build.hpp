// Properties of this build that limits and deadlines depend on.
#pragma once

namespace flutebook::sandbox {

#if defined(FLUTEBOOK_SANITIZED)
inline constexpr bool has_address_sanitizer = true;
#else
inline constexpr bool has_address_sanitizer = false;
#endif

/// The factor by which every deadline is longer in this build.
inline constexpr int slowness = has_address_sanitizer ? 10 : 1;

}  // namespace flutebook::sandbox
