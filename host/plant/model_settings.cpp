#include "host/plant/model_settings.hpp"

#include <algorithm>
#include <optional>
#include <utility>

#include "host/plant/yaml/map_reader.hpp"

namespace flutebook::plant {

namespace {

// What was left empty is an empty text: the model's declaration says what is missing.
std::optional<GivenText> read_value(const Field& field, const std::string& expected) {
    if (field.node()->kind == Node::Kind::empty) return GivenText{"", false, field.place()};
    return field.given_text(expected);
}

GivenTable read_table(const Field& table) {
    GivenTable result;
    for (const auto& cell : table.entries())
        if (auto value = read_value(cell, "a number or a word"))
            result.push_back({cell.key(), cell.key_place(), std::move(*value)});
    return result;
}

}  // namespace

ModelSettings read_model_settings(const Field& model) {
    ModelSettings result{model.key(), model.key_place(), {}};
    for (const auto& setting : model.entries()) {
        if (setting.is_map())
            result.settings.push_back({setting.key(), setting.key_place(), read_table(setting), setting.place()});
        else if (auto value = read_value(setting, "a number, a word, or a table of them"))
            result.settings.push_back({setting.key(), setting.key_place(), std::move(*value), setting.place()});
    }
    return result;
}

const GivenSetting* ModelSettings::find(const std::string& name) const {
    const auto found = std::find_if(settings.begin(), settings.end(),
                                    [&](const GivenSetting& setting) { return setting.name == name; });
    return found == settings.end() ? nullptr : &*found;
}

}  // namespace flutebook::plant
