// A rectangle goes round from its upper left corner.
#include "host/drawings/drawing_shapes.hpp"

#include <fmt/format.h>

#include <cstdint>
#include <utility>

#include "host/base/inches.hpp"
#include "host/base/parts.hpp"

namespace flutebook::drawings {

namespace {

using render::DrawnPoint;
using render::DrawnPolygon;

std::vector<DrawnPoint> rectangle(DrawnPoint corner, double length_mm, double width_mm) {
    const double right = corner.x_mm + length_mm, bottom = corner.y_mm + width_mm;
    return {corner, {right, corner.y_mm}, {right, bottom}, {corner.x_mm, bottom}};
}

// Labels are to a tenth of a mm, or a sixteenth of an inch; names are exact.
struct LabelScale {
    double of_mm;
    int decimals;
};

LabelScale label_scale(const ShownUnits& units) {
    return units.units == plant::Units::metric ? LabelScale{1, 1} : LabelScale{16 / base::mm_of_inch, 0};
}

std::string label_text(const ShownUnits& units, std::int64_t label) {
    if (units.units == plant::Units::metric) return fmt::format("{}", base::from_units(label, 1));
    return base::exact_inches(static_cast<double>(label) / 16);
}

struct DimensionEnds {
    double from_mm, to_mm;
};

void add_labelled(render::Drawing& drawing, const ShownUnits& units, DimensionLane lane, DimensionEnds ends,
                  std::int64_t label, const std::string& name) {
    const std::string length = units.exact_length(ends.to_mm - ends.from_mm);
    drawing.dimensions.push_back({lane.side, lane.lane, ends.from_mm, ends.to_mm, label_text(units, label),
                                  name.empty() ? length : name + ": " + length});
}

}  // namespace

DrawnPolygon board_rectangle(DrawnPoint corner, double length_mm, double width_mm, std::string name) {
    return {DrawnPolygon::Kind::board, rectangle(corner, length_mm, width_mm), std::move(name)};
}

DrawnPolygon lost_rectangle(DrawnPoint corner, double length_mm, double width_mm, std::string cause, std::string name) {
    return {DrawnPolygon::Kind::lost, rectangle(corner, length_mm, width_mm), std::move(name), std::move(cause)};
}

void add_dimension(render::Drawing& drawing, const ShownUnits& units, DimensionLane lane, double from_mm, double to_mm,
                   const std::string& name) {
    const LabelScale scale = label_scale(units);
    const std::int64_t label = base::in_units((to_mm - from_mm) * scale.of_mm, scale.decimals);
    add_labelled(drawing, units, lane, {from_mm, to_mm}, label, name);
}

void add_chain(render::Drawing& drawing, const ShownUnits& units, render::DrawnDimension::Side side,
               const std::vector<double>& lengths_mm, double whole_mm, const std::string& name) {
    const LabelScale scale = label_scale(units);
    std::vector<double> lengths;
    for (const double length_mm : lengths_mm) lengths.push_back(length_mm * scale.of_mm);
    const std::vector<std::int64_t> labels =
        base::parts_of(base::in_units(whole_mm * scale.of_mm, scale.decimals), lengths, scale.decimals);
    double from = 0;
    for (std::size_t i = 0; i < lengths_mm.size(); ++i) {
        if (lengths_mm.size() > 1) add_labelled(drawing, units, {side, 0}, {from, from + lengths_mm[i]}, labels[i], "");
        from += lengths_mm[i];
    }
    add_dimension(drawing, units, {side, lengths_mm.size() > 1 ? std::size_t(1) : 0}, 0, whole_mm, name);
}

}  // namespace flutebook::drawings
