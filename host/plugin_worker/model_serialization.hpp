// A model's description as one process sends it to another: a list of text fields. The receiver checks every field.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/contract/model.hpp"

namespace flutebook::plugin_worker {

/// In the order of the description. No field contains a line feed.
[[nodiscard]] std::vector<std::string> fields_of(const contract::Model& model);

/// The model that was sent, checked as a plugin's own data is checked: throws ModelError as contract::describe() does.
/// Nothing where the fields are not a description. `evaluate` is null.
[[nodiscard]] std::optional<contract::Model> model_from(std::vector<std::string> fields, const std::string& file,
                                                        const std::string& id);

}  // namespace flutebook::plugin_worker
