#include "host/reports/check_text.hpp"

#include <fmt/format.h>

#include "host/answers/check_json.hpp"
#include "host/render/number_text.hpp"
#include "host/render/text.hpp"

namespace flutebook::reports {

namespace {

using State = services::Checked::State;

struct Heading {
    const char *group, *title;
};
constexpr Heading headings[] = {{"conduct", "Conduct"},         {"file", "The file"},
                                {"load", "Loading it"},         {"description", "Its description"},
                                {"evaluate", "Its evaluation"}, {"settings", "Its settings"},
                                {"truth", "Its truth"},         {"fuzz", "Many orders at random"}};

struct FigureWords {
    const char *name, *before, *unit;
};
constexpr FigureWords figure_words[] = {{"load_ms", "loading it took", " ms"},
                                        {"row_ns", "a row in full blocks takes", " ns"},
                                        {"rows_tried", "rows of every rule", ""},
                                        {"many_rows", "rows at random", ""}};

std::string heading(const std::string& group) {
    for (const Heading& known : headings)
        if (group == known.group) return known.title;
    return group;
}

// A rule, and below it whatever there is to say.
std::string rule_text(const services::Checked::CheckedRule& rule) {
    std::string result =
        render::hanging(fmt::format("  {:<11}{:<25}", answers::state_words(rule.state), rule.id), rule.sentence);
    const std::string indent(13, ' ');
    const std::string subject = rule.state == State::broken ? "it " : "";
    if (!rule.said.empty()) result += render::hanging(indent, render::cleaned(subject + rule.said));
    if (!rule.again.empty())
        result += indent + "again: " + render::cleaned(rule.again) + "\n";  // to be copied: not broken
    return result;
}

std::string figures_text(const services::Checked& checked) {
    std::string result;
    for (const FigureWords& words : figure_words)
        for (const services::Checked::PluginMeasure& figure : checked.figures)
            if (figure.name == words.name)
                result += fmt::format("  {:<28}{:>10.{}f}{}\n", words.before, figure.value, *words.unit == 0 ? 0 : 2,
                                      words.unit);
    return result.empty() ? "" : "\nFigures, of this machine and this run\n" + result;
}

std::string count_text(const services::Checked& checked) {
    const std::size_t broken = checked.count(State::broken);
    const std::size_t left = checked.count(State::not_tried);
    if (broken == 0 && left == 0) return fmt::format("\n{} rules, and all hold.\n", checked.rules.size());
    return fmt::format("\n{} rules: {} hold, {} broken, {} not tried.\n", checked.rules.size(),
                       checked.count(State::holds), broken, left);
}

}  // namespace

std::string check_text(const services::Checked& checked) {
    std::string result = render::hanging(
        "", render::cleaned(fmt::format("{}: model {}, tried with seed {} and {} made orders", checked.asked.file,
                                        checked.model, checked.asked.seed, checked.asked.orders)));
    result += "SHA-256 " + checked.sha256 + "\n";
    std::string group;
    for (const services::Checked::CheckedRule& rule : checked.rules) {
        if (rule.group != group) result += fmt::format("\n{}\n", heading(rule.group));
        group = rule.group;
        result += rule_text(rule);
    }
    return result + figures_text(checked) + count_text(checked);
}

}  // namespace flutebook::reports
