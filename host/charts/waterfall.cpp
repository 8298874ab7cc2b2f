#include "host/charts/waterfall.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/charts/scale.hpp"
#include "host/render/svg_parts.hpp"

namespace flutebook::charts {

namespace {

constexpr double fall_height = 230, fall_top = 24, fall_bottom = 196;
constexpr double narrowest_step = 76;

struct Span {
    double from, to;
};

// Where each step begins and ends; a level begins at the foot of the picture.
std::vector<Span> spans_of(const std::vector<WaterfallStep>& steps) {
    std::vector<Span> result;
    double at = 0;
    for (const WaterfallStep& step : steps) {
        const bool is_level = step.kind == WaterfallStep::Kind::level;
        const double to = is_level ? step.value : at + step.value;
        result.push_back({is_level ? to : at, to});
        at = to;
    }
    return result;
}

// The changes are what is looked at: the scale leaves out what all levels have in common.
Scale scale_of(const std::vector<Span>& spans) {
    double least = spans.empty() ? 0 : spans.front().to, greatest = least;
    for (const Span& span : spans) {
        least = std::min({least, span.from, span.to});
        greatest = std::max({greatest, span.from, span.to});
    }
    const double room = std::max((greatest - least) * 0.35, 1e-6);
    return {least - room, greatest, 4, fall_bottom, fall_top};
}

double step_width(const std::vector<WaterfallStep>& steps) {
    double width = narrowest_step;
    for (const WaterfallStep& step : steps)
        width = std::max({width, strong_width(step.figure) + 10, label_width(step.label) + 10});
    return width;
}

const char* class_of(const WaterfallStep& step) {
    if (step.kind == WaterfallStep::Kind::level) return "level";
    return step.value < 0 ? "bar under" : "bar over";
}

}  // namespace

std::string waterfall(const Waterfall& values) {
    const auto spans = spans_of(values.steps);
    const Scale scale = scale_of(spans);
    const double wide = step_width(values.steps);
    std::string shapes;
    for (std::size_t i = 0; i < values.steps.size(); ++i) {
        const WaterfallStep& step = values.steps[i];
        const double left = wide * static_cast<double>(i), middle = left + wide / 2;
        const bool is_level = step.kind == WaterfallStep::Kind::level;
        const double low = is_level ? fall_bottom : scale.at(std::min(spans[i].from, spans[i].to));
        const double high = scale.at(std::max(spans[i].from, spans[i].to));
        std::string shape = rectangle(class_of(step), {left + wide * 0.2, high, wide * 0.6, std::max(low - high, 1.5)});
        shape += label("mid strong", middle, high - 6, step.figure);
        shape += label("mid", middle, fall_bottom + 18, step.label);
        shapes += marked(step.mark, shape);
        if (i + 1 < values.steps.size())
            shapes += path("grid", fmt::format("M{} {}H{}", render::svg_number(left + wide * 0.8),
                                               render::svg_number(scale.at(spans[i].to)),
                                               render::svg_number(left + wide * 1.2))) +
                      "\n";
    }
    const double width = std::max(wide * static_cast<double>(values.steps.size()), wide);
    return chart(values.title, width, fall_height, shapes);
}

}  // namespace flutebook::charts
