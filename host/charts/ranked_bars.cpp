#include "host/charts/ranked_bars.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/render/svg_parts.hpp"

namespace flutebook::charts {

namespace {

constexpr double ranked_width = 240, ranked_height = 16;

class RankedScale {
public:
    explicit RankedScale(const std::vector<RankedBar>& bars) {
        for (const RankedBar& bar : bars) {
            least_ = std::min({least_, bar.value, bar.expected.value_or(0)});
            greatest_ = std::max({greatest_, bar.value, bar.expected.value_or(0)});
        }
    }

    [[nodiscard]] double at(double value) const {
        const double whole = greatest_ - least_;
        return 2 + (whole > 0 ? (value - least_) / whole : 0) * (ranked_width - 4);
    }

private:
    double least_ = 0, greatest_ = 0;
};

std::string ranked_bar(const RankedScale& scale, const RankedBar& bar, const std::string& id) {
    const double from = std::min(scale.at(0), scale.at(bar.value));
    const Box box{from, 2.5, std::max(std::max(scale.at(0), scale.at(bar.value)) - from, 1.0), 11};
    std::string shapes =
        bar.cause.empty() ? rectangle(bar.value < 0 ? "bar under" : "bar over", box) : hatched(bar.cause, id, box);
    if (bar.expected) shapes += path("tick", "M" + render::svg_number(scale.at(*bar.expected)) + " 0V16");
    return chart(bar.mark.name, ranked_width, ranked_height, marked(bar.mark, shapes));
}

}  // namespace

std::vector<std::string> ranked_bars(const std::vector<RankedBar>& bars, const std::string& prefix) {
    const RankedScale scale(bars);
    std::vector<std::string> result;
    for (const RankedBar& bar : bars)
        result.push_back(ranked_bar(scale, bar, fmt::format("{}{}", prefix, result.size())));
    return result;
}

}  // namespace flutebook::charts
