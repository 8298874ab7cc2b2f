#include "host/geometry/sheet.hpp"

#include <algorithm>
#include <cmath>

namespace flutebook::geometry {

using fields::Span;
using plant::Converter;

Boxes narrowed(Boxes boxes, const BoxRow& row, const Span& limits_mm) {
    if (boxes.none()) return boxes;
    const double pitch_mm = row.box_mm + row.between_mm;
    const double beside_mm = 2 * row.edge_mm - row.between_mm;
    const double last = std::floor((limits_mm.high + same_length_mm - beside_mm) / pitch_mm);
    const double first = std::ceil((limits_mm.low - same_length_mm - beside_mm) / pitch_mm);
    return {std::clamp(first, boxes.first, boxes.last + 1), std::clamp(last, boxes.first - 1, boxes.last)};
}

const Converter* one_up_before_parting(const Route& route) {
    if (route.parting_machine() == nullptr) return nullptr;
    for (std::size_t step = 1; step < route.parting; ++step)
        if (route.converters[step - 1]->kind != Converter::Kind::printer) return route.converters[step - 1];
    return nullptr;
}

SheetRule sheet_rule(const blanks::Blank& blank, const Route& route) {
    const Converter* parting = route.parting_machine();
    if (parting == nullptr) return {{blank.length_mm, 0, 0}, {blank.width_mm, 0, 0}, 1};
    return {{blank.length_mm, parting->between_mm, parting->edge_mm},
            {blank.width_mm, parting->between_mm, parting->edge_mm},
            one_up_before_parting(route) != nullptr ? 1 : parting->ups_max};
}

bool takes_blank(const Route& route, const blanks::Blank& blank) {
    for (std::size_t step = route.parting + 1; step <= route.last_step(); ++step) {
        const Converter& converter = *route.converters[step - 1];
        if (!is_within(blank.length_mm, converter.length_mm) || !is_within(blank.width_mm, converter.width_mm))
            return false;
    }
    return true;
}

}  // namespace flutebook::geometry
