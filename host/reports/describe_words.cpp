#include "host/reports/describe_words.hpp"

#include <fmt/format.h>

namespace flutebook::reports {

namespace {

// Where a range is there only because it must be finite.
constexpr double boundless = 1e15;

}  // namespace

std::string plain_number(double value) {
    return fmt::format("{}", value + 0.0);
}

std::string range_words(const contract::Range& range) {
    const bool has_end = range.high < boundless;
    const bool has_begin = range.low > -boundless;
    if (has_begin && has_end) return fmt::format("{} to {}", plain_number(range.low), plain_number(range.high));
    if (has_begin) return plain_number(range.low) + " or more";
    return has_end ? plain_number(range.high) + " or less" : "any number";
}

std::string allowed_words(const contract::Setting& setting) {
    if (setting.choices.empty())
        return setting.unit == "1" ? range_words(setting.range)
                                   : fmt::format("{} {}", range_words(setting.range), setting.unit);
    std::string result;
    for (std::size_t i = 0; i < setting.choices.size(); ++i) {
        const bool is_last = i + 1 == setting.choices.size();
        result += (i == 0 ? "" : is_last ? " or " : ", ") + setting.choices[i];
    }
    return result;
}

std::string default_words(const contract::Setting& setting) {
    if (setting.is_required()) return "must be given";
    return setting.choices.empty() ? plain_number(setting.initial)
                                   : setting.choices.at(static_cast<std::size_t>(setting.initial));
}

std::string varies_words(contract::VariesBy varies_by) {
    return varies_by == contract::VariesBy::plant ? "one" : fmt::format("by {}", contract::to_text(varies_by));
}

std::string axis_words(contract::Axis axis) {
    return axis == contract::Axis::order ? "one for the order"
                                         : fmt::format("one for each {}", contract::to_text(axis));
}

std::string giver_words(const services::DescribedModel& description, std::size_t need) {
    if (description.need_is_fact.at(need)) return "the host";
    return description.replaces(description.model.needs[need]) ? "what it takes the place of" : "another model";
}

std::string replaces_words(const services::DescribedModel& description, const contract::Name& provided) {
    if (description.replaces_fact(provided)) return "in place of the host's own";
    return description.replaces(provided) ? "in place of what it needs by this name" : "";
}

}  // namespace flutebook::reports
