// Look-ups by hash: a hostile file may refer a hundred thousand times to a table of ten thousand.
#include "host/plant/plant_files.hpp"

#include <utility>

namespace flutebook::plant {

Codes::Codes(std::string kind, const fields::Field& table) : kind_(std::move(kind)), is_known_(table.is_map()) {
    if (!is_known_) return;
    for (const auto& entry : table.node()->entries) {
        index_.emplace(entry.key, names_.size());
        names_.push_back(entry.key);
    }
}

std::optional<std::size_t> Codes::find(const fields::Field& field, const std::string& name) const {
    if (const auto found = index_.find(name); found != index_.end()) return found->second;
    if (is_known_) field.complain_unknown_code(kind_, name, names_);
    return std::nullopt;
}

}  // namespace flutebook::plant
