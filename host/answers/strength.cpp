#include "host/answers/strength.hpp"

#include <nlohmann/json.hpp>

namespace flutebook::answers {

void add_strength(Json& tree, const std::optional<Strength>& strength) {
    if (!strength) return;
    tree["strength"] = {{"compression_n", strength->newtons},
                        {"ect_kn_m", strength->ect_kn_m},
                        {"at", strength->at},
                        {"caliper_mm", strength->caliper_mm},
                        {"perimeter_mm", strength->perimeter_mm},
                        {"height_mm", strength->height_mm},
                        {"is_too_low", strength->is_too_low()}};
}

std::optional<Strength> strength_in(const Json& tree) {
    if (!tree.contains("strength")) return std::nullopt;
    const Json& json = tree.at("strength");
    Strength result;
    result.newtons = json.at("compression_n");
    result.ect_kn_m = json.at("ect_kn_m");
    result.at = json.at("at");
    result.caliper_mm = json.at("caliper_mm");
    result.perimeter_mm = json.at("perimeter_mm");
    result.height_mm = json.at("height_mm");
    return result;
}

}  // namespace flutebook::answers
