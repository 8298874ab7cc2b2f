// One table a kind of declaration, in the order in which an author writes them.
//
// A model is a section with labelled facts.
#include "host/plant_reports/describe_report.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <vector>

#include "host/base/place.hpp"
#include "host/engine/facts.hpp"
#include "host/plant_answers/plugin_answer.hpp"
#include "host/plant_reports/model_words.hpp"
#include "host/render/text.hpp"
#include "host/reports/building.hpp"

namespace flutebook::plant_reports {

using namespace reports;

namespace {

using contract::Axis;
using contract::Model;
using contract::Setting;
using contract::VariesBy;
using engine::Graph;
using plant_answers::DescribedModel;
using Items = std::vector<std::string>;

// Who gives a need, as far as the plugin's file says.
std::string giver_words(const DescribedModel& described, std::size_t need) {
    if (described.need_is_fact.at(need)) return "the host";
    return described.replaces(described.model.needs[need]) ? "the value that it replaces" : "another model";
}

std::string replaces_words(const DescribedModel& described, const contract::Name& provided) {
    if (described.replaces_fact(provided)) return "in place of the host's own";
    return described.replaces(provided) ? "in place of what it needs by this name" : "";
}

ReportTable needs_table(const DescribedModel& described) {
    ReportTable table = name_table("needs");
    table.columns.insert(table.columns.end() - 1, {text_column("how many"), text_column("from")});
    for (std::size_t n = 0; n < described.model.needs.size(); ++n) {
        const contract::Name& need = described.model.needs[n];
        table.add(name_cells(need, {axis_words(need.axis), giver_words(described, n)}));
    }
    return table;
}

ReportTable provides_table(const DescribedModel& described) {
    ReportTable table = name_table("provides");
    table.columns.insert(table.columns.end() - 1, text_column("how many"));
    for (const contract::Name& name : described.model.provides) {
        std::vector<Cell> cells = name_cells(name, {axis_words(name.axis)});
        const std::string replaces = replaces_words(described, name);
        if (!replaces.empty()) cells.back() = name.meaning + "; " + replaces;
        table.add(std::move(cells));
    }
    return table;
}

ReportTable settings_table(const contract::Model& model) {
    ReportTable table{"settings",
                      {text_column("name"), text_column("unit"), text_column("varies"), text_column("allowed"),
                       text_column("default"), sentence_column("meaning")}};
    for (const Setting& setting : model.settings)
        table.add({Code{setting.name}, Code{setting.unit}, varies_words(model, setting),
                   setting.choices.empty() ? range_words(setting) : allowed_words(setting), default_words(setting),
                   setting.meaning});
    return table;
}

ReportTable lines_table(const contract::Model& model) {
    ReportTable table{"charges",
                      {text_column("line"), text_column("unit"), text_column("rate"), text_column("class"),
                       text_column("behaviour"), text_column("how many"), sentence_column("title")}};
    for (const contract::Line& line : model.lines)
        table.add({Code{line.name}, Code{line.unit}, Code{line.rate_unit}, contract::to_text(line.cost_class),
                   contract::to_text(line.behaviour), axis_words(line.axis), line.title});
    return table;
}

ReportSection charges_section(const contract::Model& model) {
    ReportSection section{"Charges", {lines_table(model)}};
    if (std::any_of(model.lines.begin(), model.lines.end(),
                    [](const contract::Line& line) { return line.cost_class == contract::CostClass::recovery; }))
        section.blocks.emplace_back(
            Note{"Recovery is income: an order in which such a line is above 0 is refused.", Note::Kind::sentence, 1});
    return section;
}

ReportTable losses_table(const contract::Model& model) {
    ReportTable table{"sheds", {text_column("cause"), sentence_column("title")}};
    for (const contract::Loss& loss : model.losses) table.add({Code{loss.cause}, loss.title});
    return table;
}

bool is_of_request(const Setting& setting) {
    return setting.varies_by == VariesBy::request;
}

// "varnish, delivered (0 to 100 money/kg; must be given)"
std::string sentence(const Model& model, const Setting& setting) {
    const bool is_table = setting.varies_by != VariesBy::plant && !is_of_request(setting);
    std::string condition;
    if (is_table)
        condition = fmt::format("; {}, as {{CODE: value, ...}}, {}", varies_words(model, setting),
                                setting.is_required() ? "each must be given" : default_words(setting) + " for others");
    else if (setting.is_required())
        condition = "; must be given";
    return render::cleaned(fmt::format("{} ({}{})", setting.meaning, allowed_words(setting), condition));
}

// A choice stands in quotes: YAML reads some bare words, such as `null`, as no value.
std::string yaml_value(const Setting& setting) {
    if (setting.varies_by != VariesBy::plant && !is_of_request(setting)) return " {}";
    if (setting.is_required()) return "";
    const char* quote = setting.choices.empty() ? "" : "\"";
    return fmt::format(" {}{}{}", quote, default_words(setting), quote);
}

// Each line behind the margin, which begins a comment.
std::string commented(const std::string& margin, const std::string& text) {
    std::string result;
    for (const std::string& line : render::wrapped(text, render::page_width - render::width_of(margin)))
        result += margin + line + "\n";
    return result;
}

// "paper.issued [kg, ply]"
std::string typed(const std::string& name, const std::string& unit, Axis axis) {
    return axis == Axis::order ? fmt::format("{} [{}]", name, unit)
                               : fmt::format("{} [{}, {}]", name, unit, contract::to_text(axis));
}

void add_list(Facts& facts, const std::string& label, Items items) {
    if (!items.empty()) facts.push_back({label, std::move(items)});
}

// Which file it is, and who answers for it.
Facts file_facts(const Model& model) {
    Facts facts = {{"file", {model.file}}, {"built", {"with " + model.built_with}}};
    if (!model.author.empty()) facts.push_back({"author", {model.author}});
    if (!model.contact.empty()) facts.push_back({"contact", {model.contact}});
    return facts;
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
    Facts facts = file_facts(model);
    if (model.works_elsewhere()) facts.push_back({"works", {"in a process of its own"}});
    add_list(facts, "provides", std::move(provides));
    add_list(facts, "charges", std::move(charges));
    add_list(facts, "sheds", std::move(sheds));
    add_list(facts, "settings", std::move(settings));
    return {model_title(model), {facts}};
}

std::string source_title(const plant_answers::Feed& feed) {
    if (feed.kind == plant_answers::Feed::Kind::fact) return "plant and request";
    return feed.kind == plant_answers::Feed::Kind::model ? feed.model : "settings of " + feed.model;
}

// "web.length [ft]", and from what it comes where that has another name or unit.
std::string taken(const std::string& name, const std::string& unit, Axis axis, const plant_answers::Feed& feed) {
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
        const plant_answers::Feed feed = plant_answers::feed_of(graph, link.source);
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
        const auto takers = plant_answers::takers_of(graph, m, p);
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

Report describe_report(const DescribedModel& described, DescribeScope scope) {
    const contract::Model& model = described.model;
    Report report{"plugin", model.id, ReportHeading{model_title(model), "", {}}, {}};
    if (scope == DescribeScope::file) report.heading->facts = file_facts(model);
    const auto add = [&](const char* title, ReportTable table) {
        if (!table.rows.empty()) report.sections.push_back({title, {std::move(table)}});
    };
    add("Needs", needs_table(described));
    add("Settings", settings_table(model));
    add("Provides", provides_table(described));
    if (!model.lines.empty()) report.sections.push_back(charges_section(model));
    add("Sheds", losses_table(model));
    ReportSection reasons{"Refuses an order where"};
    for (const std::string& reason : model.reasons) reasons.blocks.emplace_back(Note{reason, Note::Kind::item, 1});
    if (!reasons.blocks.empty()) report.sections.push_back(std::move(reasons));
    if (scope == DescribeScope::model)
        report.sections.push_back(
            {"In plugins.yaml", {Note{"plugins:\n" + describe_yaml(described), Note::Kind::code}}});
    return report;
}

std::string describe_yaml(const DescribedModel& described) {
    const contract::Model& model = described.model;
    std::string plant, request;
    for (const Setting& setting : model.settings) {
        const std::string line = fmt::format("{}:{}\n", setting.name, yaml_value(setting));
        if (is_of_request(setting))
            request += commented("  #     # ", sentence(model, setting)) + "  #     " + line;
        else
            plant += commented("      # ", sentence(model, setting)) + "      " + line;
    }
    std::string result =
        commented("  # ", render::cleaned(fmt::format("{} {}: {}", model.id, model.version, model.title)));
    result += plant.empty() ? fmt::format("  - {}: {{}}\n", model.id) : fmt::format("  - {}:\n{}", model.id, plant);
    if (!request.empty()) result += fmt::format("  # A request may say\n  # extras:\n  #   {}:\n{}", model.id, request);
    return result;
}

std::string model_title(const Model& model) {
    return fmt::format("{} {}  {}", model.id, model.version, model.title);
}

Report plugin_list_report(const Graph& graph, const std::vector<std::string>& not_listed) {
    Report report{"plugins", "list", std::nullopt, {}};
    for (const Model& model : graph.models) report.sections.push_back(list_entry(model));
    if (not_listed.empty()) return report;
    ReportSection section{"Not loaded"};
    section.blocks.emplace_back(Note{"plugins.yaml does not list these files; the command prints the entry of each:"});
    for (const std::string& file : not_listed)
        section.blocks.emplace_back(
            Note{fmt::format("flutebook plugin describe {} --yaml", file), Note::Kind::code, 1});
    report.sections.push_back(std::move(section));
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

}  // namespace flutebook::plant_reports
