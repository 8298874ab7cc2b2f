#include "host/command_line/search_readers.hpp"

#include <fmt/format.h>

#include <cmath>
#include <cstdlib>
#include <optional>

#include "host/base/quoted_text.hpp"

namespace flutebook::cli {

namespace {

constexpr double mm_of_an_inch = 25.4;

// Takes the unit off the end of a text; what one of it is in mm.
double take_length_unit(std::string& text) {
    const auto ends_with = [&](const std::string& end) {
        return text.size() > end.size() && text.compare(text.size() - end.size(), end.size(), end) == 0;
    };
    const bool is_inches = ends_with("in");
    if (!is_inches && !ends_with("mm")) return 1;
    text.resize(text.size() - 2);
    while (!text.empty() && text.back() == ' ') text.pop_back();
    return is_inches ? mm_of_an_inch : 1;
}

std::optional<double> positive_number(const std::string& text) {
    char* end = nullptr;
    const double value = std::strtod(text.c_str(), &end);
    const bool is_number = !text.empty() && end == text.c_str() + text.size() && std::isfinite(value) && value >= 0;
    return is_number && text.find_first_not_of("0123456789.") == std::string::npos ? std::optional(value)
                                                                                   : std::nullopt;
}

}  // namespace

Reader read_searched_size(std::vector<double>& size_mm) {
    return [&size_mm](const std::string& text) -> std::string {
        std::string lengths = text;
        const double scale = take_length_unit(lengths);
        if (auto fault = read_inside_size(size_mm)(lengths); !fault.empty()) return fault;
        for (double& length : size_mm) length *= scale;
        return {};
    };
}

Reader read_tolerance(double& share, double& mm) {
    return [&share, &mm](const std::string& text) -> std::string {
        std::string number = text;
        const bool is_share = !number.empty() && number.back() == '%';
        if (is_share) number.pop_back();
        const double scale = is_share ? 0.01 : take_length_unit(number);
        const auto value = positive_number(number);
        if (!value || (is_share && *value >= 100))
            return fmt::format(
                "is not a tolerance: {}; write a share of each length like 5%, or a length like 10 (mm) or "
                "0.5in",
                base::shown(text));
        (is_share ? share : mm) = *value * scale;
        return {};
    };
}

Reader read_state(std::optional<std::string>& value) {
    return [&value](const std::string& text) -> std::string {
        if (text != "won" && text != "lost" && text != "open")
            return fmt::format("is not a state: {}; write won, lost or open", base::shown(text));
        value = text;
        return {};
    };
}

}  // namespace flutebook::cli
