#include "host/reports/describe_markdown.hpp"

#include <fmt/format.h>

#include <cstring>
#include <initializer_list>

#include "host/render/text.hpp"
#include "host/reports/describe_words.hpp"
#include "host/reports/describe_yaml.hpp"

namespace flutebook::reports {

namespace {

// A sentence of the plugin's, so that nothing in it is taken for a sign of the page.
std::string escaped(const std::string& text) {
    std::string result;
    for (const char c : render::cleaned(text)) {
        if (std::strchr("\\`*_[]<>|#&", c) != nullptr && c != '\0') result += '\\';
        result += c;
    }
    return result;
}

// Names and units have no backtick in them.
std::string code(const std::string& text) {
    return "`" + text + "`";
}

std::string row(std::initializer_list<std::string> cells) {
    std::string result = "|";
    for (const std::string& cell : cells) result += " " + cell + " |";
    return result + "\n";
}

std::string table(const std::string& title, std::initializer_list<std::string> heads, const std::string& rows) {
    if (rows.empty()) return "";
    std::string stroke = "|";
    for (std::size_t i = 0; i < heads.size(); ++i) stroke += "---|";
    return "\n## " + title + "\n\n" + row(heads) + stroke + "\n" + rows;
}

std::string needs(const services::DescribedModel& described) {
    std::string rows;
    for (std::size_t n = 0; n < described.model.needs.size(); ++n) {
        const contract::Name& need = described.model.needs[n];
        rows += row({code(need.name), code(need.unit), axis_words(need.axis), range_words(need.range),
                     giver_words(described, n), escaped(need.meaning)});
    }
    return table("Needs", {"name", "unit", "how many", "range", "from", "meaning"}, rows);
}

std::string provides(const services::DescribedModel& described) {
    std::string rows;
    for (const contract::Name& name : described.model.provides) {
        const std::string replaces = replaces_words(described, name);
        rows += row({code(name.name), code(name.unit), axis_words(name.axis), range_words(name.range),
                     escaped(name.meaning) + (replaces.empty() ? "" : "; " + replaces)});
    }
    return table("Provides", {"name", "unit", "how many", "range", "meaning"}, rows);
}

std::string settings(const contract::Model& model) {
    std::string rows;
    for (const contract::Setting& setting : model.settings)
        rows += row({code(setting.name), code(setting.unit), varies_words(setting.varies_by),
                     setting.choices.empty() ? range_words(setting.range) : allowed_words(setting),
                     default_words(setting), escaped(setting.meaning)});
    return table("Settings", {"name", "unit", "varies", "allowed", "default", "meaning"}, rows);
}

std::string lines(const contract::Model& model) {
    std::string rows;
    for (const contract::Line& line : model.lines)
        rows += row({code(line.name), code(line.unit), contract::to_text(line.cost_class),
                     contract::to_text(line.behaviour), axis_words(line.axis), escaped(line.title)});
    return table("Charges", {"line", "unit", "class", "behaviour", "how many", "title"}, rows);
}

std::string losses(const contract::Model& model) {
    std::string rows;
    for (const contract::Loss& loss : model.losses) rows += row({code(loss.cause), escaped(loss.title)});
    return table("Sheds", {"cause", "title"}, rows);
}

std::string reasons(const contract::Model& model) {
    std::string result;
    for (const std::string& reason : model.reasons) result += "- " + escaped(reason) + "\n";
    return result.empty() ? "" : "\n## Refuses an order where\n\n" + result;
}

}  // namespace

std::string describe_markdown(const services::DescribedModel& described) {
    const contract::Model& model = described.model;
    return fmt::format("# {}\n\n{}, version {}.\n", model.id, escaped(model.title), escaped(model.version)) +
           needs(described) + settings(model) + provides(described) + lines(model) + losses(model) + reasons(model) +
           "\n## In plugins.yaml\n\n```yaml\nplugins:\n" + describe_yaml(described) + "```\n";
}

}  // namespace flutebook::reports
