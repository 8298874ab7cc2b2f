#include "host/reports/plugin_text.hpp"

#include <fmt/format.h>

#include <map>
#include <vector>

#include "host/answers/feeds.hpp"
#include "host/answers/place_text.hpp"
#include "host/render/text.hpp"

namespace flutebook::reports {

namespace {

using contract::Axis;
using contract::Model;
using engine::Graph;

// "paper.issued [kg, ply]"
std::string typed(const std::string& name, const std::string& unit, Axis axis) {
    return axis == Axis::order ? fmt::format("{} [{}]", name, unit)
                               : fmt::format("{} [{}, {}]", name, unit, contract::to_text(axis));
}

std::string row(const std::string& what, const std::vector<std::string>& parts) {
    return render::hanging(fmt::format("    {:<10}", what), parts);
}

std::string list_entry(const Model& model) {
    std::vector<std::string> provides, charges, sheds, settings;
    for (const auto& name : model.provides) provides.push_back(typed(name.name, name.unit, name.axis));
    for (const auto& line : model.lines)
        charges.push_back(fmt::format("{} ({}, {})", typed(line.name, line.unit, line.axis),
                                      contract::to_text(line.cost_class), contract::to_text(line.behaviour)));
    for (const auto& loss : model.losses) sheds.push_back(loss.cause);
    for (const auto& setting : model.settings)
        settings.push_back(
            fmt::format("{} [{}]{}", setting.name, setting.unit, setting.is_required() ? " (must be given)" : ""));
    return render::hanging("", render::cleaned(fmt::format("{} {}  {}", model.id, model.version, model.title))) +
           render::hanging("    file      ", render::cleaned(model.file)) +
           render::hanging("    built     ", render::cleaned("with " + model.built_with)) +
           (model.works_elsewhere() ? "    works     in a process of its own\n" : "") + row("provides", provides) +
           row("charges", charges) + row("sheds", sheds) + row("settings", settings);
}

std::string source_title(const answers::Feed& feed) {
    if (feed.kind == answers::Feed::Kind::fact) return "plant and request";
    return feed.kind == answers::Feed::Kind::model ? feed.model : "settings of " + feed.model;
}

// "web.length [ft]", and from what it is made where that has another name or unit.
std::string taken(const std::string& name, const std::string& unit, Axis axis, const answers::Feed& feed) {
    const std::string result = typed(name, unit, axis);
    if (feed.name == name && feed.unit == unit) return result;
    return fmt::format("{} = {} [{}]", result, feed.name, feed.unit);
}

std::string graph_entry(const Graph& graph, std::size_t m) {
    const Model& model = graph.models[m];
    std::vector<std::string> sources;  // in the order they first come
    std::map<std::string, std::vector<std::string>> names;
    const auto take = [&](const std::string& name, const std::string& unit, Axis axis, const engine::Link& link) {
        const answers::Feed feed = answers::feed_of(graph, link.source);
        auto& item = names[source_title(feed)];
        if (item.empty()) sources.push_back(source_title(feed));
        item.push_back(taken(name, unit, axis, feed));
    };
    for (std::size_t n = 0; n < model.needs.size(); ++n)
        take(model.needs[n].name, model.needs[n].unit, model.needs[n].axis, graph.needs[m][n]);
    for (std::size_t s = 0; s < model.settings.size(); ++s)
        if (const auto& replaced = graph.settings[m][s])
            take("setting " + model.settings[s].name, model.settings[s].unit, axis_of(model.settings[s].varies_by),
                 *replaced);

    std::string result = fmt::format("{}. {}\n", m + 1, render::cleaned(model.id));
    for (const std::string& source : sources)
        result += render::hanging(fmt::format("     from {}: ", source), names[source]);
    for (std::size_t p = 0; p < model.provides.size(); ++p) {
        const contract::Name& name = model.provides[p];
        const auto takers = answers::takers_of(graph, m, p);
        result += render::hanging(fmt::format("     gives {} to ", typed(name.name, name.unit, name.axis)),
                                  takers.empty() ? std::vector<std::string>{"nobody"} : takers);
    }
    std::vector<std::string> charges;
    for (const contract::Line& line : model.lines) charges.push_back(line.name);
    result += render::hanging("     charges ", charges);
    if (!model.losses.empty()) result += "     sheds the losses\n";
    return result;
}

}  // namespace

std::string plugin_list_text(const services::Workplace& workplace) {
    std::string result;
    for (const Model& model : workplace.engine.graph().models) {
        if (!result.empty()) result += '\n';
        result += list_entry(model);
    }
    return result;
}

std::string plugin_graph_text(const services::Workplace& workplace) {
    const Graph& graph = workplace.engine.graph();
    std::string result;
    for (std::size_t m = 0; m < graph.models.size(); ++m) {
        if (m != 0) result += '\n';
        result += graph_entry(graph, m);
    }
    if (workplace.plant.preferences.empty()) return result;
    result += "\nReplaced, as the plant prefers\n";
    for (const auto& preference : workplace.plant.preferences)
        result += render::hanging(
            "     ", render::cleaned(fmt::format("{} is taken from {} ({})", preference.name, preference.model,
                                                 answers::place_text(preference.place))));
    return result;
}

}  // namespace flutebook::reports
