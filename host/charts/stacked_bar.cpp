#include "host/charts/stacked_bar.hpp"

#include <fmt/format.h>

namespace flutebook::charts {

namespace {

constexpr double stacked_width = 1180, stacked_height = 44;
constexpr double least_share = 0.01;

std::string names_of(const std::vector<StackedPart>& parts) {
    std::string names;
    for (const StackedPart& part : parts) names += (names.empty() ? "" : "; ") + part.mark.name;
    return names;
}

// The parts that are drawn, and the small ones as one behind them; a small one alone stays itself.
std::vector<StackedPart> drawn_parts(const StackedBar& values, double whole) {
    std::vector<StackedPart> result, small;
    double rest = 0;
    for (const StackedPart& part : values.parts) {
        if (part.value <= 0) continue;
        const bool is_small = part.value < least_share * whole;
        (is_small ? small : result).push_back(part);
        if (is_small) rest += part.value;
    }
    if (small.size() == 1) result.push_back(small.front());
    if (small.size() > 1)
        result.push_back(
            {fmt::format("{} others", small.size()), {names_of(small), values.others_link}, rest, "other"});
    return result;
}

}  // namespace

std::string stacked_bar(const StackedBar& values, const std::string& prefix) {
    double whole = 0;
    for (const StackedPart& part : values.parts)
        if (part.value > 0) whole += part.value;
    std::string shapes;
    double at = 1;
    std::size_t count = 0;
    for (const StackedPart& part : drawn_parts(values, whole)) {
        const double width = part.value / whole * (stacked_width - 2);
        const Box box{at, 1, width, 22};
        std::string shape =
            part.cause.empty() ? rectangle("board", box) : hatched(part.cause, fmt::format("{}{}", prefix, count), box);
        const std::string text = label_width(part.label) + 4 <= width ? part.label : std::string();
        shape += label("", at, 38, text);
        shapes += marked(part.mark, shape);
        at += width;
        ++count;
    }
    return chart(values.title, stacked_width, stacked_height, shapes);
}

}  // namespace flutebook::charts
