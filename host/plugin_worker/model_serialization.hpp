// A model's description as a process tells it to another: a row of plain fields, and nothing of it believed.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/contract/model.hpp"

namespace flutebook::plugin_worker {

/// In the order of the description. No field holds a line feed.
[[nodiscard]] std::vector<std::string> fields_of(const contract::Model& model);

/// The model that was told, held to everything that a plugin's own data is held to: throws ModelError as
/// engine::describe() does. Nothing where the fields are no description at all. Its function is not set.
[[nodiscard]] std::optional<contract::Model> model_told(std::vector<std::string> fields, const std::string& file,
                                                        const std::string& id);

}  // namespace flutebook::plugin_worker
