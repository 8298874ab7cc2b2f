// One table a kind of declaration, in the order in which an author writes them.
#include "host/reports/describe_report.hpp"

#include <fmt/format.h>

#include "host/render/text.hpp"
#include "host/reports/building.hpp"
#include "host/reports/model_words.hpp"

namespace flutebook::reports {

namespace {

using answers::DescribedModel;
using contract::Setting;
using contract::VariesBy;

// Who gives a need, as far as the plugin's file says.
std::string giver_words(const DescribedModel& described, std::size_t need) {
    if (described.need_is_fact.at(need)) return "the host";
    return described.replaces(described.model.needs[need]) ? "what it takes the place of" : "another model";
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
        table.add({Code{setting.name}, Code{setting.unit}, varies_words(setting.varies_by),
                   setting.choices.empty() ? range_words(setting.range) : allowed_words(setting),
                   default_words(setting), setting.meaning});
    return table;
}

ReportTable lines_table(const contract::Model& model) {
    ReportTable table{"charges",
                      {text_column("line"), text_column("unit"), text_column("class"), text_column("behaviour"),
                       text_column("how many"), sentence_column("title")}};
    for (const contract::Line& line : model.lines)
        table.add({Code{line.name}, Code{line.unit}, contract::to_text(line.cost_class),
                   contract::to_text(line.behaviour), axis_words(line.axis), line.title});
    return table;
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
std::string sentence(const Setting& setting) {
    const bool is_table = setting.varies_by != VariesBy::plant && !is_of_request(setting);
    std::string condition;
    if (is_table)
        condition = fmt::format("; {}, as {{CODE: value, ...}}, {}", varies_words(setting.varies_by),
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

}  // namespace

Report describe_report(const DescribedModel& described, DescribeScope scope) {
    const contract::Model& model = described.model;
    Report report{"plugin", model.id, ReportHeading{model_title(model), "", {}}, {}};
    if (scope == DescribeScope::file)
        report.heading->facts = {{"file", {model.file}}, {"built", {"with " + model.built_with}}};
    const auto add = [&](const char* title, ReportTable table) {
        if (!table.rows.empty()) report.sections.push_back({title, {std::move(table)}});
    };
    add("Needs", needs_table(described));
    add("Settings", settings_table(model));
    add("Provides", provides_table(described));
    add("Charges", lines_table(model));
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
            request += commented("  #     # ", sentence(setting)) + "  #     " + line;
        else
            plant += commented("      # ", sentence(setting)) + "      " + line;
    }
    std::string result =
        commented("  # ", render::cleaned(fmt::format("{} {}: {}", model.id, model.version, model.title)));
    result += plant.empty() ? fmt::format("  - {}: {{}}\n", model.id) : fmt::format("  - {}:\n{}", model.id, plant);
    if (!request.empty()) result += fmt::format("  # A request may say\n  # extras:\n  #   {}:\n{}", model.id, request);
    return result;
}

}  // namespace flutebook::reports
