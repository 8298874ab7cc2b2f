// A model is a section; what belongs to it stands behind labels.
#include "host/reports/plugin_reports.hpp"

#include <fmt/format.h>

#include <map>
#include <vector>

#include "host/answers/plugin_answer.hpp"
#include "host/base/place.hpp"
#include "host/engine/facts.hpp"
#include "host/reports/building.hpp"
#include "host/reports/model_words.hpp"

namespace flutebook::reports {

namespace {

using contract::Axis;
using contract::Model;
using engine::Graph;
using Items = std::vector<std::string>;

// "paper.issued [kg, ply]"
std::string typed(const std::string& name, const std::string& unit, Axis axis) {
    return axis == Axis::order ? fmt::format("{} [{}]", name, unit)
                               : fmt::format("{} [{}, {}]", name, unit, contract::to_text(axis));
}

void add_list(Facts& facts, const std::string& label, Items items) {
    if (!items.empty()) facts.push_back({label, std::move(items)});
}

ReportSection list_entry(const Model& model) {
    Items provides, charges, sheds, settings;
    for (const auto& name : model.provides) provides.push_back(typed(name.name, name.unit, name.axis));
    for (const auto& line : model.lines)
        charges.push_back(fmt::format("{} ({}, {})", typed(line.name, line.unit, line.axis),
                                      contract::to_text(line.cost_class), contract::to_text(line.behaviour)));
    for (const auto& loss : model.losses) sheds.push_back(loss.cause);
    for (const auto& setting : model.settings)
        settings.push_back(
            fmt::format("{} [{}]{}", setting.name, setting.unit, setting.is_required() ? " (must be given)" : ""));
    Facts facts = {{"file", {model.file}}, {"built", {"with " + model.built_with}}};
    if (model.works_elsewhere()) facts.push_back({"works", {"in a process of its own"}});
    add_list(facts, "provides", std::move(provides));
    add_list(facts, "charges", std::move(charges));
    add_list(facts, "sheds", std::move(sheds));
    add_list(facts, "settings", std::move(settings));
    return {model_title(model), {facts}};
}

std::string source_title(const answers::Feed& feed) {
    if (feed.kind == answers::Feed::Kind::fact) return "plant and request";
    return feed.kind == answers::Feed::Kind::model ? feed.model : "settings of " + feed.model;
}

// "web.length [ft]", and from what it comes where that has another name or unit.
std::string taken(const std::string& name, const std::string& unit, Axis axis, const answers::Feed& feed) {
    const std::string result = typed(name, unit, axis);
    if (feed.name == name && feed.unit == unit) return result;
    return fmt::format("{} = {} [{}]", result, feed.name, feed.unit);
}

// What a model takes, by whom it takes it from, in the order they first come.
Facts sources_of(const Graph& graph, std::size_t m) {
    const Model& model = graph.models[m];
    Facts sources;
    std::map<std::string, std::size_t> places;
    const auto take = [&](const std::string& name, const std::string& unit, Axis axis, const engine::Link& link) {
        const answers::Feed feed = answers::feed_of(graph, link.source);
        const auto [place, is_new] = places.try_emplace(source_title(feed), sources.size());
        if (is_new) sources.push_back({fmt::format("from {}:", source_title(feed)), {}});
        sources[place->second].items.push_back(taken(name, unit, axis, feed));
    };
    for (std::size_t n = 0; n < model.needs.size(); ++n)
        take(model.needs[n].name, model.needs[n].unit, model.needs[n].axis, graph.needs[m][n]);
    for (std::size_t s = 0; s < model.settings.size(); ++s)
        if (const auto& replaced = graph.settings[m][s])
            take("setting " + model.settings[s].name, model.settings[s].unit, axis_of(model.settings[s].varies_by),
                 *replaced);
    return sources;
}

ReportSection graph_entry(const Graph& graph, std::size_t m) {
    const Model& model = graph.models[m];
    Facts facts = sources_of(graph, m);
    for (std::size_t p = 0; p < model.provides.size(); ++p) {
        const contract::Name& name = model.provides[p];
        const auto takers = answers::takers_of(graph, m, p);
        facts.push_back({fmt::format("gives {} to", typed(name.name, name.unit, name.axis)),
                         takers.empty() ? Items(1, "nobody") : takers});
    }
    Items charges;
    for (const contract::Line& line : model.lines) charges.push_back(line.name);
    add_list(facts, "charges", std::move(charges));
    if (!model.losses.empty()) facts.push_back({"sheds", {"the losses"}});
    return {fmt::format("{}. {}", m + 1, model.id), {facts}};
}

}  // namespace

std::string model_title(const Model& model) {
    return fmt::format("{} {}  {}", model.id, model.version, model.title);
}

Report plugin_list_report(const Graph& graph) {
    Report report{"plugins", "list", std::nullopt, {}};
    for (const Model& model : graph.models) report.sections.push_back(list_entry(model));
    return report;
}

Report plugin_graph_report(const plant::Plant& plant, const Graph& graph) {
    Report report{"plugins", "graph", std::nullopt, {}};
    for (std::size_t m = 0; m < graph.models.size(); ++m) report.sections.push_back(graph_entry(graph, m));
    if (plant.preferences.empty()) return report;
    ReportSection replaced{"Replaced, as the plant prefers"};
    for (const auto& preference : plant.preferences)
        replaced.blocks.emplace_back(Note{fmt::format("{} is taken from {} ({})", preference.name, preference.model,
                                                      base::place_text(preference.place)),
                                          Note::Kind::item, 1});
    report.sections.push_back(std::move(replaced));
    return report;
}

Report facts_report() {
    Report report{"plugins", "facts", ReportHeading{"What the host gives", "", {}}, {}};
    report.sections.push_back(
        {"",
         {Note{
             "Any model may need these. Where `prefer` in plugins.yaml says so, a model may give a replaceable one in "
             "the host's place."}}});
    for (const Axis axis : {Axis::order, Axis::ply, Axis::step}) {
        ReportTable table = name_table(fmt::format("facts of {}", contract::to_text(axis)));
        table.columns.insert(table.columns.end() - 1, text_column("replaceable"));
        for (const engine::Fact& fact : engine::facts())
            if (fact.name.axis == axis) table.add(name_cells(fact.name, {fact.is_replaceable ? "yes" : ""}));
        report.sections.push_back({axis_words(axis), {table}});
    }
    return report;
}

}  // namespace flutebook::reports
