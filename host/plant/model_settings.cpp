#include "host/plant/model_settings.hpp"

#include <algorithm>
#include <utility>

#include "host/plant/yaml/map_reader.hpp"

namespace flutebook::plant {

namespace {

GivenTable read_table(const Field& table) {
    GivenTable result;
    for (const auto& cell : table.entries())
        if (auto value = cell.given_text("a number or a word"))
            result.push_back({cell.key(), cell.key_place(), std::move(*value)});
    return result;
}

}  // namespace

ModelSettings read_model_settings(const Field& model) {
    ModelSettings result{model.key(), model.key_place(), {}};
    for (const auto& setting : model.entries()) {
        if (setting.is_map())
            result.settings.push_back({setting.key(), setting.key_place(), read_table(setting), setting.place()});
        else if (auto value = setting.given_text("a number, a word, or a table of them"))
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
