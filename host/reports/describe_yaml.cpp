#include "host/reports/describe_yaml.hpp"

#include <fmt/format.h>

#include "host/render/text.hpp"
#include "host/reports/describe_words.hpp"

namespace flutebook::reports {

namespace {

using contract::Setting;
using contract::VariesBy;

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

// A choice in quotes: among its names may be a word that YAML takes for nothing.
std::string value(const Setting& setting) {
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

std::string describe_yaml(const services::DescribedModel& described) {
    const contract::Model& model = described.model;
    std::string plant, request;
    for (const Setting& setting : model.settings) {
        if (is_of_request(setting))
            request += commented("  #     # ", sentence(setting)) +
                       fmt::format("  #     {}:{}\n", setting.name, value(setting));
        else
            plant +=
                commented("      # ", sentence(setting)) + fmt::format("      {}:{}\n", setting.name, value(setting));
    }
    std::string result =
        commented("  # ", render::cleaned(fmt::format("{} {}: {}", model.id, model.version, model.title)));
    result += plant.empty() ? fmt::format("  - {}: {{}}\n", model.id) : fmt::format("  - {}:\n{}", model.id, plant);
    if (!request.empty()) result += fmt::format("  # A request may say\n  # extras:\n  #   {}:\n{}", model.id, request);
    return result;
}

}  // namespace flutebook::reports
