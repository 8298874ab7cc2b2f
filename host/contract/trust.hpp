// Whether a plugin's file may be let into this process. The engine asks before it loads one, and does not know how the
// answer is found.
#pragma once

#include <vector>

#include "host/contract/plugin_file.hpp"

namespace flutebook::contract {

class Trust {
public:
    Trust() = default;
    Trust(const Trust&) = delete;
    Trust& operator=(const Trust&) = delete;
    virtual ~Trust() = default;

    /// All files that check() will be asked about, so that they can be looked at at the same time.
    virtual void prepare(const std::vector<const PluginFile*>& files) = 0;

    /// Throws ModelError where these very bytes are not to be loaded. Nothing of the file has been run in this process.
    virtual void check(const PluginFile& file) = 0;

    /// Whether the file was built with this program: it then works in this process, where the plant does not say
    /// otherwise. Any other works in a process of its own.
    [[nodiscard]] virtual bool is_installed(const PluginFile& file) const = 0;
};

}  // namespace flutebook::contract
