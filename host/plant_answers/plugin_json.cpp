#include "host/plant_answers/plugin_json.hpp"

#include <nlohmann/json.hpp>

#include <tuple>

#include "host/answers/json_text.hpp"
#include "host/base/place.hpp"
#include "host/engine/facts.hpp"

namespace flutebook::plant_answers {

namespace {

using contract::Model;
using engine::Graph;

answers::Json name_json(const contract::Name& name) {
    return {
        {"name", name.name}, {"unit", name.unit}, {"axis", contract::to_text(name.axis)}, {"meaning", name.meaning}};
}

answers::Json ranged(const contract::Name& name) {
    answers::Json result = name_json(name);
    result["low"] = name.range.low;
    result["high"] = name.range.high;
    return result;
}

answers::Json line_json(const contract::Line& line) {
    return {{"line", line.name},
            {"title", line.title},
            {"unit", line.unit},
            {"axis", contract::to_text(line.axis)},
            {"class", contract::to_text(line.cost_class)},
            {"behaviour", contract::to_text(line.behaviour)},
            {"rate_unit", line.rate_unit}};
}

answers::Json text_or_null(const std::string& text) {
    return text.empty() ? answers::Json() : answers::Json(text);
}

answers::Json setting_json(const Model& model, const contract::Setting& setting) {
    const auto& [usual, stepped_over, keyed_by] = std::tie(setting.usual, setting.stepped_over, setting.keyed_by);
    return {{"name", setting.name},
            {"unit", setting.unit},
            {"meaning", setting.meaning},
            {"varies_by", contract::to_text(setting.varies_by)},
            {"default", setting.initial ? answers::Json(*setting.initial) : answers::Json(nullptr)},
            {"low", setting.range.low},
            {"high", setting.range.high},
            {"usual_low", usual ? answers::Json(usual->low) : answers::Json()},
            {"usual_high", usual ? answers::Json(usual->high) : answers::Json()},
            {"stepped_over", stepped_over ? answers::Json(model.needs[*stepped_over].name) : answers::Json()},
            {"keyed_by", keyed_by ? answers::Json(model.settings[*keyed_by].name) : answers::Json()},
            {"choices", setting.choices}};
}

answers::Json feed_json(const Feed& feed) {
    static constexpr const char* kinds[] = {"fact", "model", "setting"};
    return {{"kind", kinds[static_cast<std::size_t>(feed.kind)]},
            {"model", feed.model.empty() ? answers::Json(nullptr) : answers::Json(feed.model)},
            {"name", feed.name},
            {"unit", feed.unit}};
}

answers::Json graph_entry(const Graph& graph, std::size_t m) {
    const Model& model = graph.models[m];
    answers::Json result = {{"id", model.id},
                            {"needs", answers::Json::array()},
                            {"provides", answers::Json::array()},
                            {"replaced_settings", answers::Json::array()}};
    for (std::size_t n = 0; n < model.needs.size(); ++n) {
        result["needs"].push_back(name_json(model.needs[n]));
        result["needs"].back()["from"] = feed_json(feed_of(graph, graph.needs[m][n].source));
    }
    for (std::size_t p = 0; p < model.provides.size(); ++p) {
        result["provides"].push_back(name_json(model.provides[p]));
        result["provides"].back()["to"] = takers_of(graph, m, p);
    }
    for (std::size_t s = 0; s < model.settings.size(); ++s)
        if (const auto& replaced = graph.settings[m][s])
            result["replaced_settings"].push_back({{"setting", model.settings[s].name},
                                                   {"unit", model.settings[s].unit},
                                                   {"from", feed_json(feed_of(graph, replaced->source))}});
    return result;
}

answers::Json model_json(const Model& model) {
    answers::Json result = {{"id", model.id},
                            {"version", model.version},
                            {"title", model.title},
                            {"file", model.file},
                            {"built_with", model.built_with},
                            {"provides", answers::Json::array()},
                            {"author", text_or_null(model.author)},
                            {"contact", text_or_null(model.contact)},
                            {"charges", answers::Json::array()},
                            {"sheds", answers::Json::array()},
                            {"settings", answers::Json::array()},
                            {"reasons", model.reasons}};
    for (const auto& name : model.provides) result["provides"].push_back(name_json(name));
    for (const auto& line : model.lines) result["charges"].push_back(line_json(line));
    for (const auto& loss : model.losses) result["sheds"].push_back({{"cause", loss.cause}, {"title", loss.title}});
    for (const auto& setting : model.settings) result["settings"].push_back(setting_json(model, setting));
    return result;
}

answers::Json date_json(const std::optional<base::Date>& date) {
    return date ? answers::Json(base::to_string(*date)) : answers::Json();
}

answers::Json value_json(const contract::Setting& setting, const ValueInForce& value) {
    const bool is_given = value.place.line > 0;
    return {
        {"key", text_or_null(value.key)},
        {"from", value.from ? answers::Json(*value.from) : answers::Json()},
        {"value", value.value},
        {"choice", setting.choices.empty() ? answers::Json()
                                           : answers::Json(setting.choices.at(static_cast<std::size_t>(value.value)))},
        {"file", is_given ? text_or_null(value.place.file) : answers::Json()},
        {"line", is_given ? answers::Json(value.place.line) : answers::Json()}};
}

void add_in_force(answers::Json& entry, const contract::Setting& setting, const SettingInForce& used) {
    entry["replaced_by"] = used.replaced_by ? feed_json(*used.replaced_by) : answers::Json();
    entry["since"] = date_json(used.since);
    entry["later"] = answers::Json::array();
    for (const base::Date& date : used.later) entry["later"].push_back(base::to_string(date));
    entry["values"] = answers::Json::array();
    for (const ValueInForce& value : used.values) entry["values"].push_back(value_json(setting, value));
}

}  // namespace

std::string model_in_use_document(const ModelInUse& used) {
    const Model& model = used.model;
    answers::Json result = model_json(model);
    result["sha256"] = text_or_null(model.sha256);
    result["trust"] = used.trust == ModelInUse::Trust::installed ? "installed" : "tried";
    result["isolated"] = model.works_elsewhere();
    result["needs"] = answers::Json::array();
    for (std::size_t n = 0; n < model.needs.size(); ++n) {
        result["needs"].push_back(ranged(model.needs[n]));
        result["needs"].back()["from"] = feed_json(used.feeds[n]);
    }
    result["provides"] = answers::Json::array();
    for (std::size_t p = 0; p < model.provides.size(); ++p) {
        result["provides"].push_back(ranged(model.provides[p]));
        result["provides"].back()["to"] = used.takers[p];
    }
    for (std::size_t s = 0; s < model.settings.size(); ++s)
        add_in_force(result["settings"][s], model.settings[s], used.settings[s]);
    return answers::document_text("model", result);
}

std::string plugin_list_document(const Graph& graph, const std::vector<std::string>& not_listed) {
    answers::Json result = {{"plugins", answers::Json::array()}};
    for (const Model& model : graph.models) {
        result["plugins"].push_back(model_json(model));
        result["plugins"].back()["isolated"] = model.works_elsewhere();
    }
    result["not_listed"] = not_listed;
    return answers::document_text("plugin-list", result);
}

std::string plugin_graph_document(const plant::Plant& plant, const Graph& graph) {
    answers::Json result = {{"models", answers::Json::array()}, {"replaced", answers::Json::array()}};
    for (std::size_t m = 0; m < graph.models.size(); ++m) result["models"].push_back(graph_entry(graph, m));
    for (const auto& preference : plant.preferences)
        result["replaced"].push_back(
            {{"name", preference.name}, {"by", preference.model}, {"place", base::place_text(preference.place)}});
    return answers::document_text("plugin-graph", result);
}

std::string describe_document(const DescribedModel& described) {
    const contract::Model& model = described.model;
    answers::Json result = model_json(model);
    result["provides"] = answers::Json::array();
    for (const contract::Name& name : model.provides) result["provides"].push_back(ranged(name));
    result["needs"] = answers::Json::array();
    for (std::size_t n = 0; n < model.needs.size(); ++n) {
        result["needs"].push_back(ranged(model.needs[n]));
        result["needs"].back()["from"] = described.need_is_fact[n] ? "fact" : "model";
    }
    return answers::document_text("plugin", result);
}

std::string check_document(const Checked& checked) {
    using State = Checked::State;
    answers::Json result = {{"file", checked.asked.file},
                            {"model", checked.model},
                            {"sha256", checked.sha256},
                            {"seed", checked.asked.seed},
                            {"orders", checked.asked.orders},
                            {"passed", checked.has_passed()},
                            {"holds", checked.count(State::holds)},
                            {"broken", checked.count(State::broken)},
                            {"not_tried", checked.count(State::not_tried)},
                            {"rules", answers::Json::array()},
                            {"figures", answers::Json::object()}};
    for (const Checked::CheckedRule& rule : checked.rules)
        result["rules"].push_back({{"rule", rule.id},
                                   {"group", rule.group},
                                   {"sentence", rule.sentence},
                                   {"state", state_words(rule.state)},
                                   {"said", text_or_null(rule.said)},
                                   {"again", text_or_null(rule.again)}});
    for (const Checked::CheckFigure& figure : checked.figures) result["figures"][figure.name] = figure.value;
    return answers::document_text("plugin-check", result);
}

std::string state_words(Checked::State state) {
    switch (state) {
        case Checked::State::holds:
            return "holds";
        case Checked::State::broken:
            return "broken";
        case Checked::State::not_tried:
            break;
    }
    return "not tried";
}

std::string facts_document() {
    answers::Json result = {{"facts", answers::Json::array()}};
    for (const engine::Fact& fact : engine::facts()) {
        result["facts"].push_back(ranged(fact.name));
        result["facts"].back()["replaceable"] = fact.is_replaceable;
    }
    return answers::document_text("facts", result);
}

std::string new_plugin_document(const std::string& name, const NewPlugin& plugin) {
    return answers::document_text("new-plugin", {{"folder", name}, {"files", plugin.files}, {"prefix", plugin.prefix}});
}

}  // namespace flutebook::plant_answers
