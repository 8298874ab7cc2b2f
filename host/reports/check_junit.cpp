#include "host/reports/check_junit.hpp"

#include <fmt/format.h>

#include "host/base/characters.hpp"
#include "host/render/text.hpp"

namespace flutebook::reports {

namespace {

using State = services::Checked::State;

// Between quotes or tags. What is no character of XML, or no UTF-8, is left out of the text as a question mark.
std::string escaped(std::string_view given) {
    std::string result;
    for (std::size_t i = 0; i < given.size();) {
        const base::Character one = base::character_at(given, i);
        const std::string_view sign = given.substr(i, one.length);
        i += one.length;
        if (one.fault != base::CharacterFault::none || sign == "\xEF\xBF\xBE" || sign == "\xEF\xBF\xBF")
            result += '?';
        else if (sign == "&")
            result += "&amp;";
        else if (sign == "<")
            result += "&lt;";
        else if (sign == ">")
            result += "&gt;";
        else if (sign == "\"")
            result += "&quot;";
        else
            result += sign;
    }
    return result;
}

std::string test_case(const services::Checked& checked, const services::Checked::CheckedRule& rule) {
    const std::string opened =
        fmt::format("    <testcase classname=\"{}\" name=\"{}: {}\"", escaped(checked.model + "." + rule.group),
                    escaped(rule.id), escaped(rule.sentence));
    switch (rule.state) {
        case State::holds:
            return opened + "/>\n";
        case State::broken:
            return fmt::format("{}>\n      <failure message=\"it {}\">again: {}</failure>\n    </testcase>\n", opened,
                               escaped(rule.said), escaped(rule.again));
        case State::not_tried:
            break;
    }
    return fmt::format("{}>\n      <skipped message=\"{}\"/>\n    </testcase>\n", opened, escaped(rule.said));
}

}  // namespace

std::string check_junit(const services::Checked& checked) {
    const std::string counts =
        fmt::format("tests=\"{}\" failures=\"{}\" errors=\"0\" skipped=\"{}\"", checked.rules.size(),
                    checked.count(State::broken), checked.count(State::not_tried));
    std::string result = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<testsuites>\n";
    result += fmt::format("  <testsuite name=\"flutebook plugin check {}\" {}>\n    <properties>\n",
                          escaped(checked.asked.file), counts);
    const auto add_property = [&](const std::string& name, const std::string& value) {
        result += fmt::format("      <property name=\"{}\" value=\"{}\"/>\n", escaped(name), escaped(value));
    };
    add_property("sha256", checked.sha256);
    add_property("seed", std::to_string(checked.asked.seed));
    add_property("orders", std::to_string(checked.asked.orders));
    for (const services::Checked::PluginMeasure& figure : checked.figures)
        add_property(figure.name, fmt::format("{}", figure.value));
    result += "    </properties>\n";
    for (const services::Checked::CheckedRule& rule : checked.rules) result += test_case(checked, rule);
    return result + "  </testsuite>\n</testsuites>\n";
}

}  // namespace flutebook::reports
