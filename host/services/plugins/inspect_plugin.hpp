// What a plugin file declares, and whether it keeps the rules. No plant is opened.
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "host/contract/model.hpp"
#include "host/plant_answers/plugin_answer.hpp"

namespace flutebook::services {

/// Tries every rule on the file, in a child process; the file is loaded nowhere else. `begun` is called with the name
/// of each rule before it is tried. Throws ModelError where there is no such file, or no process can be started.
[[nodiscard]] plant_answers::Checked check_plugin(const plant_answers::CheckOptions& options,
                                                  const std::function<void(const std::string&)>& begun);

/// Reads the description in the file; no model is evaluated. A file that is not yet trusted is first tried in a child
/// process. Throws ModelError where the file is no plugin, does not pass, or has an invalid description.
[[nodiscard]] plant_answers::DescribedModel describe(const std::string& file);

}  // namespace flutebook::services
