// Creates the folder of a new plugin with the author's name, from the template that comes with the SDK.
#pragma once

#include <string>
#include <vector>

#include "host/plant_answers/plugin_answer.hpp"

namespace flutebook::services {

/// Writes the folder `name` into the working folder: source, build, a golden order, a page about it. On an error
/// nothing of it remains. Throws InputError (request) for a name that no model may have, that an installed model has or
/// that already exists in the folder, and where files cannot be read or written.
[[nodiscard]] plant_answers::NewPlugin new_plugin(const std::string& name);

}  // namespace flutebook::services
