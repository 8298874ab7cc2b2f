#include "host/cli/plugin_text.hpp"

#include <fmt/format.h>

#include <map>
#include <vector>

#include "host/cli/feeds.hpp"
#include "host/cli/place_text.hpp"
#include "host/cli/text.hpp"

namespace flutebook::cli {

namespace {

using engine::Axis;
using engine::Graph;
using engine::Model;

// "paper.issued [kg, ply]"
std::string typed(const std::string& name, const std::string& unit, Axis axis) {
    return axis == Axis::order ? fmt::format("{} [{}]", name, unit)
                               : fmt::format("{} [{}, {}]", name, unit, engine::to_text(axis));
}

std::string row(const std::string& what, const std::vector<std::string>& parts) {
    return hanging(fmt::format("    {:<10}", what), parts);
}

std::string list_entry(const Model& model) {
    std::vector<std::string> provides, charges, sheds, settings;
    for (const auto& name : model.provides) provides.push_back(typed(name.name, name.unit, name.axis));
    for (const auto& line : model.lines)
        charges.push_back(fmt::format("{} ({}, {})", typed(line.name, line.unit, line.axis),
                                      engine::to_text(line.cost_class), engine::to_text(line.behaviour)));
    for (const auto& loss : model.losses) sheds.push_back(loss.cause);
    for (const auto& setting : model.settings)
        settings.push_back(
            fmt::format("{} [{}]{}", setting.name, setting.unit, setting.is_required() ? " (must be given)" : ""));
    return hanging("", cleaned(fmt::format("{} {}  {}", model.id, model.version, model.title))) +
           hanging("    file      ", cleaned(model.file)) +
           hanging("    built     ", cleaned("with " + model.built_with)) +
           (model.works_elsewhere() ? "    works     in a process of its own\n" : "") + row("provides", provides) +
           row("charges", charges) + row("sheds", sheds) + row("settings", settings);
}

std::string source_title(const Feed& feed) {
    if (feed.kind == Feed::Kind::fact) return "plant and request";
    return feed.kind == Feed::Kind::model ? feed.model : "settings of " + feed.model;
}

// "web.length [ft]", and from what it is made where that has another name or unit.
std::string taken(const std::string& name, const std::string& unit, Axis axis, const Feed& feed) {
    const std::string made = typed(name, unit, axis);
    if (feed.name == name && feed.unit == unit) return made;
    return fmt::format("{} = {} [{}]", made, feed.name, feed.unit);
}

std::string graph_entry(const Graph& graph, std::size_t m) {
    const Model& model = graph.models[m];
    std::vector<std::string> sources;  // in the order they first come
    std::map<std::string, std::vector<std::string>> names;
    const auto take = [&](const std::string& name, const std::string& unit, Axis axis, const engine::Link& link) {
        const Feed feed = feed_of(graph, link.source);
        auto& own = names[source_title(feed)];
        if (own.empty()) sources.push_back(source_title(feed));
        own.push_back(taken(name, unit, axis, feed));
    };
    for (std::size_t n = 0; n < model.needs.size(); ++n)
        take(model.needs[n].name, model.needs[n].unit, model.needs[n].axis, graph.needs[m][n]);
    for (std::size_t s = 0; s < model.settings.size(); ++s)
        if (const auto& replaced = graph.settings[m][s])
            take("setting " + model.settings[s].name, model.settings[s].unit, axis_of(model.settings[s].varies_by),
                 *replaced);

    std::string made = fmt::format("{}. {}\n", m + 1, cleaned(model.id));
    for (const std::string& source : sources) made += hanging(fmt::format("     from {}: ", source), names[source]);
    for (std::size_t p = 0; p < model.provides.size(); ++p) {
        const engine::Name& name = model.provides[p];
        const auto takers = takers_of(graph, m, p);
        made += hanging(fmt::format("     gives {} to ", typed(name.name, name.unit, name.axis)),
                        takers.empty() ? std::vector<std::string>{"nobody"} : takers);
    }
    std::vector<std::string> charges;
    for (const engine::Line& line : model.lines) charges.push_back(line.name);
    made += hanging("     charges ", charges);
    if (!model.losses.empty()) made += "     sheds the losses\n";
    return made;
}

}  // namespace

std::string plugin_list_text(const desk::Workplace& workplace) {
    std::string made;
    for (const Model& model : workplace.engine.graph().models) {
        if (!made.empty()) made += '\n';
        made += list_entry(model);
    }
    return made;
}

std::string plugin_graph_text(const desk::Workplace& workplace) {
    const Graph& graph = workplace.engine.graph();
    std::string made;
    for (std::size_t m = 0; m < graph.models.size(); ++m) {
        if (m != 0) made += '\n';
        made += graph_entry(graph, m);
    }
    if (workplace.plant.preferences.empty()) return made;
    made += "\nReplaced, as the plant prefers\n";
    for (const auto& own : workplace.plant.preferences)
        made += hanging("     ",
                        cleaned(fmt::format("{} is taken from {} ({})", own.name, own.model, place_text(own.place))));
    return made;
}

}  // namespace flutebook::cli
