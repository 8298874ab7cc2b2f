#include "host/reports/describe_text.hpp"

#include <fmt/format.h>

#include "host/render/text.hpp"
#include "host/reports/describe_words.hpp"

namespace flutebook::reports {

namespace {

// "paper.issued [kg, ply]"
std::string typed(const std::string& name, const std::string& unit, contract::Axis axis) {
    return axis == contract::Axis::order ? fmt::format("{} [{}]", name, unit)
                                         : fmt::format("{} [{}, {}]", name, unit, contract::to_text(axis));
}

// A name, and below it what there is to say of it.
std::string entry(const std::string& name, const std::vector<std::string>& said) {
    std::string result = render::hanging("  ", render::cleaned(name));
    for (const std::string& sentence : said)
        if (!sentence.empty()) result += render::hanging("      ", render::cleaned(sentence));
    return result;
}

std::string section(const std::string& title, const std::string& body) {
    return body.empty() ? "" : "\n" + title + "\n" + body;
}

std::string needs_text(const services::DescribedModel& described) {
    std::string result;
    for (std::size_t n = 0; n < described.model.needs.size(); ++n) {
        const contract::Name& need = described.model.needs[n];
        result += entry(typed(need.name, need.unit, need.axis),
                        {need.meaning, range_words(need.range) + "; from " + giver_words(described, n)});
    }
    return result;
}

std::string provides_text(const services::DescribedModel& described) {
    std::string result;
    for (const contract::Name& name : described.model.provides)
        result += entry(typed(name.name, name.unit, name.axis),
                        {name.meaning, range_words(name.range), replaces_words(described, name)});
    return result;
}

std::string settings_text(const contract::Model& model) {
    std::string result;
    for (const contract::Setting& setting : model.settings) {
        const bool is_one = setting.varies_by == contract::VariesBy::plant;
        result +=
            entry(is_one ? fmt::format("{} [{}]", setting.name, setting.unit)
                         : fmt::format("{} [{}, {}]", setting.name, setting.unit, varies_words(setting.varies_by)),
                  {setting.meaning, fmt::format("{}; {}{}", allowed_words(setting),
                                                setting.is_required() ? "" : "default ", default_words(setting))});
    }
    return result;
}

std::string lines_text(const contract::Model& model) {
    std::string result;
    for (const contract::Line& line : model.lines)
        result += entry(typed(line.name, line.unit, line.axis),
                        {fmt::format("{}; {}, {}", line.title, contract::to_text(line.cost_class),
                                     contract::to_text(line.behaviour))});
    return result;
}

}  // namespace

std::string describe_text(const services::DescribedModel& described) {
    const contract::Model& model = described.model;
    std::string losses, reasons;
    for (const contract::Loss& loss : model.losses) losses += entry(loss.cause, {loss.title});
    for (const std::string& reason : model.reasons) reasons += render::hanging("  ", render::cleaned(reason));
    return render::hanging("", render::cleaned(fmt::format("{} {}  {}", model.id, model.version, model.title))) +
           render::hanging("  file   ", render::cleaned(model.file)) +
           render::hanging("  built  ", render::cleaned("with " + model.built_with)) +
           section("Needs", needs_text(described)) + section("Settings", settings_text(model)) +
           section("Provides", provides_text(described)) + section("Charges", lines_text(model)) +
           section("Sheds", losses) + section("Refuses an order where", reasons);
}

}  // namespace flutebook::reports
