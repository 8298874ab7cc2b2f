// From a plugin's exported data to a Model: reads no further than the sizes in the data say, and checks every field.
#pragma once

#include <string>

#include "host/contract/model.hpp"

namespace flutebook::contract {

/// `file` is how the plugin is named to people, `id` what it must call itself. Throws ModelError with the first thing
/// that is wrong: magic, major, sizes, names, units, ranges, or anything declared twice.
[[nodiscard]] Model describe(const flutebook_model& exported, const std::string& file, const std::string& id);

}  // namespace flutebook::contract
