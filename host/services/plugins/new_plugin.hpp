// Starting a plugin: a working folder in the author's own name, from the template that comes with the SDK.
#pragma once

#include <string>
#include <vector>

#include "host/answers/plugin_answer.hpp"

namespace flutebook::services {

/// Writes the folder `name` into the folder the process works in: source, build, a golden order, a page about it. It is
/// whole when this returns; where it cannot be, nothing is left of it. Throws InputError (request) for a name that no
/// model may have, that a model installed with the program has, or under which something stands already, and where
/// nothing can be read or written.
[[nodiscard]] answers::NewPlugin new_plugin(const std::string& name);

}  // namespace flutebook::services
