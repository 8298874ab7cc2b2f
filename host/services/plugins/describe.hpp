// A plugin's own account of itself, from its file alone: no plant is opened, and none of its models is evaluated.
#pragma once

#include <string>
#include <vector>

#include "host/contract/model.hpp"

namespace flutebook::services {

struct DescribedModel {
    contract::Model model;
    std::vector<bool> need_is_fact;  // by need: given by the host itself, not by another model

    /// Whether a provided name takes the place of a fact, where a plant prefers this model for it.
    [[nodiscard]] bool replaces_fact(const contract::Name& provided) const;
    /// Whether the model both needs and provides a name: it then gives its own in place of what it gets.
    [[nodiscard]] bool replaces(const contract::Name& name) const;
};

/// Reads the description that the file holds. A file that was never tried before is first tried in a process apart.
/// Throws ModelError where the file is no plugin, does not pass its trial, or describes itself wrongly.
[[nodiscard]] DescribedModel describe(const std::string& file);

}  // namespace flutebook::services
