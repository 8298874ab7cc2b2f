#include "host/what_if/counts.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace flutebook::what_if {

namespace {

bool is_count_of_the_host(std::string_view path) {
    static constexpr std::array<std::string_view, 4> counts = {".sheets", ".colours", ".outs_max", ".ups_max"};
    return path.find(".quantities[") != std::string_view::npos ||
           std::any_of(counts.begin(), counts.end(), [&](std::string_view count) { return path.ends_with(count); });
}

bool is_whole(double value) {
    return std::floor(value) == value;
}

bool is_whole(const contract::Range& range) {
    return is_whole(range.low) && is_whole(range.high);
}

bool counts_things(const contract::Setting& setting) {
    return setting.unit == "1" && setting.choices.empty() && setting.range.high > 1 && is_whole(setting.range) &&
           (!setting.usual || is_whole(*setting.usual)) && (setting.is_required() || is_whole(*setting.initial));
}

// "delivery.deliveries" and what stands behind a setting's name: the entries of its table.
bool is_at(std::string_view path, std::string_view model, std::string_view setting) {
    if (!path.starts_with(model) || !path.substr(model.size()).starts_with('.')) return false;
    path.remove_prefix(model.size() + 1);
    if (!path.starts_with(setting)) return false;
    path.remove_prefix(setting.size());
    return path.empty() || path.front() == '.' || path.front() == '[';
}

bool is_count_of_a_setting(const std::vector<contract::Model>& models, std::string_view path) {
    for (const std::string_view root : {"plugins.", "request.extras."}) {
        if (!path.starts_with(root)) continue;
        path.remove_prefix(root.size());
        for (const contract::Model& model : models)
            for (const contract::Setting& setting : model.settings)
                if (is_at(path, model.id, setting.name)) return counts_things(setting);
    }
    return false;
}

}  // namespace

bool is_count(const std::vector<contract::Model>& models, std::string_view path, double value) {
    return is_count_of_the_host(path) || (value >= 1 && is_whole(value) && is_count_of_a_setting(models, path));
}

}  // namespace flutebook::what_if
