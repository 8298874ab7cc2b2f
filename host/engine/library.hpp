// Opening a plugin's file. The one file that touches Boost.DLL is library.cpp.
#pragma once

#include <string>

#include <flutebook/plugin.h>

namespace flutebook::engine {

/// Opens a shared library with immediate and local binding and returns the description it exports, unread and
/// unchecked. The library is never closed: the pointer is good until the process ends. Throws ModelError where the
/// file cannot be opened, lacks the symbol, or changes how the process computes by being loaded.
[[nodiscard]] const flutebook_model& open_plugin(const std::string& file);

}  // namespace flutebook::engine
