#include "host/reports/explain_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>

#include "host/answers/place_text.hpp"
#include "host/render/number_text.hpp"
#include "host/render/text.hpp"

namespace flutebook::reports {

namespace {

using explain::TracedFigure;
using explain::Trail;

constexpr std::size_t deepest_indent = 40;

// All that a reader could want of a double, without its noise.
std::string value_text(double value) {
    return render::significant_number(value, 10, 12);
}

// "flutes.yaml:19:28, 19:38; papers.yaml:9:67": each file once.
std::string places_text(const std::vector<base::Place>& places) {
    std::string result, file;
    for (const base::Place& place : places) {
        const std::string whole = answers::place_text(place);
        const bool same = !file.empty() && place.file == file && place.line != 0;
        if (!result.empty()) result += same ? ", " : "; ";
        result += same ? whole.substr(file.size() + 1) : whole;
        file = place.file;
    }
    return result;
}

// Two models may charge lines of one name.
std::string unit_of(const services::Quote& quote, const TracedFigure& amount) {
    for (const services::CostLine& line : quote.lines)
        if (line.line == amount.name && line.plugin == amount.model) return line.unit;
    return "1";
}

class TrailWriter {
public:
    TrailWriter(const ShownUnits& units, const Trail& trail, ShownUnit quantity)
        : units_(units), trail_(trail), quantity_(std::move(quantity)), numbers_(trail.figures.size(), 0) {}

    std::string text() {
        go_down(0, 1);
        return made_;
    }

private:
    void go_down(std::size_t at, std::size_t depth) {
        const TracedFigure& figure = trail_.figures[at];
        const std::string indent(std::min(2 * depth, deepest_indent), ' ');
        const std::string name = figure.name + (figure.where.empty() ? "" : ", " + figure.where);
        if (numbers_[at] != 0) {
            made_ += render::hanging(indent, render::cleaned(fmt::format("{}: see [{}]", name, numbers_[at])));
            return;
        }
        numbers_[at] = ++told_;
        const std::string first = fmt::format("{}[{}] ", indent, numbers_[at]);
        const std::string head = figure.kind == TracedFigure::Kind::amount ? amount_text(figure) : with_unit(figure);
        made_ += render::hanging(first, render::cleaned(fmt::format("{} = {}", name, head)));
        made_ += render::hanging(std::string(first.size(), ' '), render::cleaned(story(figure)));
        for (const std::size_t input : figure.inputs) go_down(input, depth + 1);
    }

    std::string with_unit(const TracedFigure& figure) const {
        const ShownUnit shown = units_.of(figure.unit);
        return value_text(shown(figure.value)) + (shown.name.empty() ? "" : " " + shown.name);
    }

    std::string amount_text(const TracedFigure& figure) const {
        const std::string unit = quantity_.name.empty() ? "" : " " + quantity_.name;
        return fmt::format("{}{} x {} = {} {}", value_text(quantity_(trail_.quantity)), unit,
                           value_text(trail_.rate / quantity_.scale), render::number_text(figure.value, 4),
                           units_.currency);
    }

    // What it is, who says so, and where it was written.
    static std::string story(const TracedFigure& figure) {
        std::string result = figure.meaning;
        const auto add = [&](const std::string& part) {
            if (!result.empty() && !part.empty()) result += "; ";
            result += part;
        };
        if (figure.kind == TracedFigure::Kind::setting)
            add(fmt::format("setting of model {}{}", figure.model, figure.places.empty() ? ", its default" : ""));
        else if (figure.kind != TracedFigure::Kind::fact)
            add("by model " + figure.model);
        add(places_text(figure.places));
        return result;
    }

    const ShownUnits& units_;
    const Trail& trail_;
    ShownUnit quantity_;                // of the line
    std::vector<std::size_t> numbers_;  // by figure, from 1; 0 where it was not told yet
    std::size_t told_ = 0;
    std::string made_;
};

}  // namespace

std::string explain_text(const ShownUnits& units, const std::string& line, const services::Quote& quote) {
    if (quote.trails.empty())
        return render::hanging("", fmt::format("Behind `{}`: it charges nothing here", render::cleaned(line)));
    std::string result = render::hanging("", fmt::format("Behind `{}`", render::cleaned(line)));
    for (const Trail& trail : quote.trails)
        result += TrailWriter(units, trail, units.of(unit_of(quote, trail.figures[0]))).text();
    return result;
}

}  // namespace flutebook::reports
