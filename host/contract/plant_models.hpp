// The models that a plant lists, opened and described: each file found, held against its pin, its place and what trusts
// it, and opened in this process or in one of its own.
#pragma once

#include <string>
#include <vector>

#include "host/contract/model.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::contract {

class Trust;
class IsolatedLoader;

/// What stands between the host and a plugin's file; each may be null.
struct PluginGuards {
    Trust* trust;
    IsolatedLoader* isolated_loader;
};

/// In the order of the plant's list, from `plugins/` in its folder, else from `installed`. Throws ModelError with what
/// is wrong with any of the files.
[[nodiscard]] std::vector<Model> open_models(const plant::Plant& plant, const std::string& installed,
                                             const PluginGuards& guards);

}  // namespace flutebook::contract
