#include "host/answers/plugin_json.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/feeds.hpp"
#include "host/answers/place_text.hpp"

namespace flutebook::answers {

namespace {

using Json = nlohmann::ordered_json;
using contract::Model;
using engine::Graph;

Json line_json(const contract::Line& line) {
    return {{"line", line.name},
            {"title", line.title},
            {"unit", line.unit},
            {"axis", contract::to_text(line.axis)},
            {"class", contract::to_text(line.cost_class)},
            {"behaviour", contract::to_text(line.behaviour)}};
}

Json setting_json(const contract::Setting& setting) {
    return {{"name", setting.name},
            {"unit", setting.unit},
            {"meaning", setting.meaning},
            {"varies_by", contract::to_text(setting.varies_by)},
            {"default", setting.is_required() ? Json(nullptr) : Json(setting.initial)},
            {"low", setting.range.low},
            {"high", setting.range.high},
            {"choices", setting.choices}};
}

Json feed_json(const Feed& feed) {
    static constexpr const char* kinds[] = {"fact", "model", "setting"};
    return {{"kind", kinds[static_cast<std::size_t>(feed.kind)]},
            {"model", feed.model.empty() ? Json(nullptr) : Json(feed.model)},
            {"name", feed.name},
            {"unit", feed.unit}};
}

Json graph_entry(const Graph& graph, std::size_t m) {
    const Model& model = graph.models[m];
    Json made = {
        {"id", model.id}, {"needs", Json::array()}, {"provides", Json::array()}, {"replaced_settings", Json::array()}};
    for (std::size_t n = 0; n < model.needs.size(); ++n) {
        made["needs"].push_back(name_json(model.needs[n]));
        made["needs"].back()["from"] = feed_json(feed_of(graph, graph.needs[m][n].source));
    }
    for (std::size_t p = 0; p < model.provides.size(); ++p) {
        made["provides"].push_back(name_json(model.provides[p]));
        made["provides"].back()["to"] = takers_of(graph, m, p);
    }
    for (std::size_t s = 0; s < model.settings.size(); ++s)
        if (const auto& replaced = graph.settings[m][s])
            made["replaced_settings"].push_back({{"setting", model.settings[s].name},
                                                 {"unit", model.settings[s].unit},
                                                 {"from", feed_json(feed_of(graph, replaced->source))}});
    return made;
}

}  // namespace

Json name_json(const contract::Name& name) {
    return {
        {"name", name.name}, {"unit", name.unit}, {"axis", contract::to_text(name.axis)}, {"meaning", name.meaning}};
}

Json model_json(const Model& model) {
    Json made = {{"id", model.id},           {"version", model.version},       {"title", model.title},
                 {"file", model.file},       {"built_with", model.built_with}, {"provides", Json::array()},
                 {"charges", Json::array()}, {"sheds", Json::array()},         {"settings", Json::array()},
                 {"reasons", model.reasons}};
    for (const auto& name : model.provides) made["provides"].push_back(name_json(name));
    for (const auto& line : model.lines) made["charges"].push_back(line_json(line));
    for (const auto& loss : model.losses) made["sheds"].push_back({{"cause", loss.cause}, {"title", loss.title}});
    for (const auto& setting : model.settings) made["settings"].push_back(setting_json(setting));
    return made;
}

Json plugin_list_json(const services::Workplace& workplace) {
    Json made = {{"plugins", Json::array()}};
    for (const Model& model : workplace.engine.graph().models) {
        made["plugins"].push_back(model_json(model));
        made["plugins"].back()["isolated"] = model.works_elsewhere();
    }
    return made;
}

Json plugin_graph_json(const services::Workplace& workplace) {
    const Graph& graph = workplace.engine.graph();
    Json made = {{"models", Json::array()}, {"replaced", Json::array()}};
    for (std::size_t m = 0; m < graph.models.size(); ++m) made["models"].push_back(graph_entry(graph, m));
    for (const auto& own : workplace.plant.preferences)
        made["replaced"].push_back({{"name", own.name}, {"by", own.model}, {"place", place_text(own.place)}});
    return made;
}

}  // namespace flutebook::answers
