// Figures are numbered in the order of the walk, so that a figure that is reached again is referred to by its number.
#include "host/reports/explain_report.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>

#include "host/base/place.hpp"
#include "host/render/number_text.hpp"
#include "host/reports/building.hpp"

namespace flutebook::reports {

namespace {

using explain::TracedFigure;
using explain::Trail;

constexpr std::size_t deepest_level = 20;

// Ten significant digits: enough to calculate with, without the rounding error of the last ones.
std::string value_text(double value) {
    return render::significant_number(value, 10, 12);
}

// "flutes.yaml:19:28, 19:38; papers.yaml:9:67": each file once.
std::string places_text(const std::vector<base::Place>& places) {
    std::string result, file;
    for (const base::Place& place : places) {
        const std::string whole = base::place_text(place);
        const bool same = !file.empty() && place.file == file && place.line != 0;
        if (!result.empty()) result += same ? ", " : "; ";
        result += same ? whole.substr(file.size() + 1) : whole;
        file = place.file;
    }
    return result;
}

// Two models may have lines of the same name.
std::string unit_of(const answers::Quote& quote, const TracedFigure& amount) {
    for (const answers::CostLine& line : quote.lines)
        if (line.line == amount.name && line.plugin == amount.model) return line.unit;
    return "1";
}

class TrailWriter {
public:
    TrailWriter(const ShownUnits& units, const Trail& trail, ShownUnit quantity)
        : units_(units), trail_(trail), quantity_(std::move(quantity)), numbers_(trail.figures.size(), 0) {}

    std::vector<render::Block> notes() {
        go_down(0, 1);
        return std::move(notes_);
    }

private:
    void go_down(std::size_t at, std::size_t depth) {
        const TracedFigure& figure = trail_.figures[at];
        const std::size_t level = std::min(depth, deepest_level);
        const std::string name = figure.name + (figure.where.empty() ? "" : ", " + figure.where);
        if (numbers_[at] != 0) return add(fmt::format("{}: see [{}]", name, numbers_[at]), level);
        numbers_[at] = ++told_;
        const std::string head = figure.kind == TracedFigure::Kind::amount ? amount_text(figure) : with_unit(figure);
        add(fmt::format("[{}] {} = {}", numbers_[at], name, head), level);
        add(story(figure), level + 2);
        for (const std::size_t input : figure.inputs) go_down(input, depth + 1);
    }

    void add(std::string text, std::size_t level) {
        notes_.emplace_back(Note{std::move(text), Note::Kind::sentence, level});
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

    // Its meaning, the model that gives it, and the place where it was written.
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
    std::vector<render::Block> notes_;
};

}  // namespace

ReportSection explain_section(const ShownUnits& units, const std::string& line, const answers::Quote& quote) {
    ReportSection section{fmt::format("Behind `{}`", line)};
    if (quote.trails.empty()) section.title += ": it charges nothing here";
    for (const Trail& trail : quote.trails)
        for (render::Block& note : TrailWriter(units, trail, units.of(unit_of(quote, trail.figures[0]))).notes())
            section.blocks.push_back(std::move(note));
    return section;
}

}  // namespace flutebook::reports
