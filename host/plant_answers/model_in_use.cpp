#include "host/plant_answers/model_in_use.hpp"

#include "host/plant_answers/plant_files.hpp"

namespace flutebook::plant_answers {

namespace {

using contract::SettingTable;

void add_values(const plant::Plant& plant, const std::string& key, const contract::SteppedValue& stepped,
                std::vector<ValueInForce>& values) {
    for (const contract::ValueStep& step : stepped.steps()) {
        ValueInForce value{key, std::nullopt, step.value, step.place};
        if (stepped.is_stepped()) value.from = step.from;
        value.place.file = name_in_plant(plant, step.place.file);
        values.push_back(std::move(value));
    }
}

SettingInForce setting_in_force(const plant::Plant& plant, const contract::SettingValues& given, base::Date day) {
    SettingInForce result;
    const SettingTable* table = given.on(day);
    for (const contract::DatedTable& dated : given.tables) {
        if (dated.from > day) result.later.push_back(dated.from);
        if (given.is_dated && &dated.table == table) result.since = dated.from;
    }
    if (table == nullptr) return result;
    for (std::size_t i = 0; i < table->keys.size(); ++i)
        add_values(plant, table->keys[i], table->cells[i], result.values);
    add_values(plant, "", table->otherwise, result.values);
    return result;
}

}  // namespace

ModelInUse model_in_use(const plant::Plant& plant, const engine::Graph& graph, const contract::Settings& settings,
                        std::size_t model, base::Date day) {
    ModelInUse result;
    result.model = graph.models[model];
    for (const engine::Link& link : graph.needs[model]) result.feeds.push_back(feed_of(graph, link.source));
    for (std::size_t p = 0; p < result.model.provides.size(); ++p) result.takers.push_back(takers_of(graph, model, p));
    for (std::size_t s = 0; s < result.model.settings.size(); ++s) {
        const auto& replaced = graph.settings[model][s];
        SettingInForce setting;
        if (replaced)
            setting.replaced_by = feed_of(graph, replaced->source);
        else
            setting = setting_in_force(plant, settings[model][s], day);
        result.settings.push_back(std::move(setting));
    }
    return result;
}

}  // namespace flutebook::plant_answers
