// A model's description as one process sends it to another: a row of plain fields, all of them checked by the receiver.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/contract/model.hpp"

namespace flutebook::plugin_worker {

/// In the order of the description. No field holds a line feed.
[[nodiscard]] std::vector<std::string> fields_of(const contract::Model& model);

/// The model that was sent, checked as a plugin's own data is checked: throws ModelError as contract::describe() does.
/// Nothing where the fields are no description. Its function is not set.
[[nodiscard]] std::optional<contract::Model> model_from(std::vector<std::string> fields, const std::string& file,
                                                        const std::string& id);

}  // namespace flutebook::plugin_worker
