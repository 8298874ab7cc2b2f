// Groups of rules stand in the order in which they were tried.
#include "host/plant_reports/check_report.hpp"

#include <fmt/format.h>

#include "host/plant_answers/plugin_json.hpp"
#include "host/render/escaping.hpp"
#include "host/render/number_text.hpp"
#include "host/reports/building.hpp"

namespace flutebook::plant_reports {

using namespace reports;

namespace {

using plant_answers::Checked;
using State = plant_answers::Checked::State;

struct GroupTitle {
    const char *group, *title;
};
constexpr GroupTitle group_titles[] = {{"conduct", "Behaviour"},       {"file", "The file"},
                                       {"load", "Loading it"},         {"description", "Its description"},
                                       {"evaluate", "Its evaluation"}, {"settings", "Its settings"},
                                       {"truth", "Correctness"},       {"fuzz", "Many orders at random"},
                                       {"end", "After all calls"}};

struct MeasureTitle {
    const char *name, *title, *unit;
    int decimals;
};
constexpr MeasureTitle measure_titles[] = {{"load_ms", "loading it took", "ms", 2},
                                           {"row_ns", "a row in full blocks takes", "ns", 2},
                                           {"rows_tried", "rows of every rule", "", 0},
                                           {"many_rows", "rows at random", "", 0}};

std::string title_of(const std::string& group) {
    for (const GroupTitle& known : group_titles)
        if (group == known.group) return known.title;
    return group;
}

render::TableRow rule_row(const Checked::CheckedRule& rule) {
    render::TableRow row{{plant_answers::state_words(rule.state), Code{rule.id}, rule.sentence}, {}, 1};
    const std::string subject = rule.state == State::broken ? "it " : "";
    if (!rule.said.empty()) row.notes.push_back({subject + rule.said, Note::Kind::sentence, 3});
    if (!rule.again.empty()) row.notes.push_back({"again: " + rule.again, Note::Kind::code, 3});
    return row;
}

ReportSection rules_section(const Checked& checked) {
    ReportTable table{"rules", {text_column(), text_column(), sentence_column()}};
    std::string group;
    for (const Checked::CheckedRule& rule : checked.rules) {
        if (rule.group != group) table.add(RowKind::group, {title_of(rule.group)});
        group = rule.group;
        table.rows.push_back(rule_row(rule));
    }
    return {"Rules", {table}};
}

ReportSection measures_section(const Checked& checked) {
    ReportTable table{"figures", {text_column(), number_column("")}};
    for (const MeasureTitle& known : measure_titles)
        for (const Checked::CheckFigure& figure : checked.figures)
            if (figure.name == known.name)
                table.add({known.title, Number{figure.value, known.decimals, Number::Form::fixed, known.unit}});
    return {"Figures, of this machine and this run", {table}};
}

std::string count_text(const Checked& checked) {
    const std::size_t broken = checked.count(State::broken);
    const std::size_t left = checked.count(State::not_tried);
    if (broken == 0 && left == 0) return fmt::format("{} rules, and all hold.", checked.rules.size());
    return fmt::format("{} rules: {} hold, {} broken, {} not tried.", checked.rules.size(), checked.count(State::holds),
                       broken, left);
}

std::string test_case(const Checked& checked, const Checked::CheckedRule& rule) {
    using render::markup_text;
    const std::string opened =
        fmt::format("    <testcase classname=\"{}\" name=\"{}: {}\"", markup_text(checked.model + "." + rule.group),
                    markup_text(rule.id), markup_text(rule.sentence));
    switch (rule.state) {
        case State::holds:
            return opened + "/>\n";
        case State::broken:
            return fmt::format("{}>\n      <failure message=\"it {}\">again: {}</failure>\n    </testcase>\n", opened,
                               markup_text(rule.said), markup_text(rule.again));
        case State::not_tried:
            break;
    }
    return fmt::format("{}>\n      <skipped message=\"{}\"/>\n    </testcase>\n", opened, markup_text(rule.said));
}

}  // namespace

Report check_report(const Checked& checked) {
    Report report{"check", checked.model, std::nullopt, {}};
    report.sections.push_back({fmt::format("{}: model {}, tried with seed {} and {} generated orders",
                                           checked.asked.file, checked.model, checked.asked.seed, checked.asked.orders),
                               {Facts{{"SHA-256", {checked.sha256}}}}});
    report.sections.push_back(rules_section(checked));
    ReportSection measures = measures_section(checked);
    if (!std::get<ReportTable>(measures.blocks.front()).rows.empty()) report.sections.push_back(std::move(measures));
    report.sections.push_back({count_text(checked)});
    return report;
}

std::string check_junit(const Checked& checked) {
    using render::markup_text;
    const std::string counts =
        fmt::format("tests=\"{}\" failures=\"{}\" errors=\"0\" skipped=\"{}\"", checked.rules.size(),
                    checked.count(State::broken), checked.count(State::not_tried));
    std::string result = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<testsuites>\n";
    result += fmt::format("  <testsuite name=\"flutebook plugin check {}\" {}>\n    <properties>\n",
                          markup_text(checked.asked.file), counts);
    const auto add_property = [&](const std::string& name, const std::string& value) {
        result += fmt::format("      <property name=\"{}\" value=\"{}\"/>\n", markup_text(name), markup_text(value));
    };
    add_property("sha256", checked.sha256);
    add_property("seed", std::to_string(checked.asked.seed));
    add_property("orders", std::to_string(checked.asked.orders));
    for (const Checked::CheckFigure& figure : checked.figures)
        add_property(figure.name, fmt::format("{}", figure.value));
    result += "    </properties>\n";
    for (const Checked::CheckedRule& rule : checked.rules) result += test_case(checked, rule);
    return result + "  </testsuite>\n</testsuites>\n";
}

}  // namespace flutebook::plant_reports
