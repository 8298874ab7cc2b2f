// Loading a plugin's file. The one file that touches Boost.DLL is library.cpp.
#pragma once

#include <flutebook/plugin.h>

#include <optional>
#include <string>

#include "host/contract/plugin_file.hpp"

namespace flutebook::contract {

struct Library {
    const flutebook_model* model;               // the description it exports, unread and unchecked; null where none
    std::optional<std::string> computes_apart;  // what of the floating-point environment it changed by being loaded
};

/// Loads a shared library with immediate and local binding. It is never closed: the pointer is good until the process
/// ends. The same bytes are loaded once. The floating-point environment is put back. Throws ModelError where the file
/// cannot be loaded.
[[nodiscard]] Library load_library(const PluginFile& file);

/// The same, and throws ModelError too where the file exports no description or changed how the process computes.
[[nodiscard]] const flutebook_model& load_plugin(const PluginFile& file);

}  // namespace flutebook::contract
