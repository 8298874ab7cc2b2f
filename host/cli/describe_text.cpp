#include "host/cli/describe_text.hpp"

#include <fmt/format.h>

#include "host/cli/describe_words.hpp"
#include "host/cli/text.hpp"

namespace flutebook::cli {

namespace {

// "paper.issued [kg, ply]"
std::string typed(const std::string& name, const std::string& unit, engine::Axis axis) {
    return axis == engine::Axis::order ? fmt::format("{} [{}]", name, unit)
                                       : fmt::format("{} [{}, {}]", name, unit, engine::to_text(axis));
}

// A name, and below it what there is to say of it.
std::string entry(const std::string& name, const std::vector<std::string>& said) {
    std::string made = hanging("  ", cleaned(name));
    for (const std::string& sentence : said)
        if (!sentence.empty()) made += hanging("      ", cleaned(sentence));
    return made;
}

std::string section(const std::string& title, const std::string& body) {
    return body.empty() ? "" : "\n" + title + "\n" + body;
}

std::string needs(const desk::Description& described) {
    std::string made;
    for (std::size_t n = 0; n < described.model.needs.size(); ++n) {
        const engine::Name& need = described.model.needs[n];
        made += entry(typed(need.name, need.unit, need.axis),
                      {need.meaning, range_words(need.range) + "; from " + giver_words(described, n)});
    }
    return made;
}

std::string provides(const desk::Description& described) {
    std::string made;
    for (const engine::Name& name : described.model.provides)
        made += entry(typed(name.name, name.unit, name.axis),
                      {name.meaning, range_words(name.range), replaces_words(described, name)});
    return made;
}

std::string settings(const engine::Model& model) {
    std::string made;
    for (const engine::Setting& setting : model.settings) {
        const bool is_one = setting.varies_by == engine::VariesBy::plant;
        made += entry(is_one ? fmt::format("{} [{}]", setting.name, setting.unit)
                             : fmt::format("{} [{}, {}]", setting.name, setting.unit, varies_words(setting.varies_by)),
                      {setting.meaning, fmt::format("{}; {}{}", allowed_words(setting),
                                                    setting.is_required() ? "" : "default ", default_words(setting))});
    }
    return made;
}

std::string lines(const engine::Model& model) {
    std::string made;
    for (const engine::Line& line : model.lines)
        made += entry(
            typed(line.name, line.unit, line.axis),
            {fmt::format("{}; {}, {}", line.title, engine::to_text(line.cost_class), engine::to_text(line.behaviour))});
    return made;
}

}  // namespace

std::string describe_text(const desk::Description& described) {
    const engine::Model& model = described.model;
    std::string losses, reasons;
    for (const engine::Loss& loss : model.losses) losses += entry(loss.cause, {loss.title});
    for (const std::string& reason : model.reasons) reasons += hanging("  ", cleaned(reason));
    return hanging("", cleaned(fmt::format("{} {}  {}", model.id, model.version, model.title))) +
           hanging("  file   ", cleaned(model.file)) + hanging("  built  ", cleaned("with " + model.built_with)) +
           section("Needs", needs(described)) + section("Settings", settings(model)) +
           section("Provides", provides(described)) + section("Charges", lines(model)) + section("Sheds", losses) +
           section("Refuses an order where", reasons);
}

}  // namespace flutebook::cli
