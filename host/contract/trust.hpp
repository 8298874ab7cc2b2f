// Whether a plugin's file may be let into this process. The engine asks before it loads one; how it is found out is
// not the engine's to know.
#pragma once

#include "host/contract/plugin_file.hpp"

namespace flutebook::contract {

class Trust {
public:
    Trust() = default;
    Trust(const Trust&) = delete;
    Trust& operator=(const Trust&) = delete;
    virtual ~Trust() = default;

    /// Throws ModelError where these very bytes are not to be loaded. Nothing of the file has been run in this process.
    virtual void check(const PluginFile& file) = 0;
};

}  // namespace flutebook::contract
