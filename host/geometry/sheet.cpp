#include "host/geometry/sheet.hpp"

#include <algorithm>
#include <cmath>

namespace flutebook::geometry {

using catalogue::Converter;
using catalogue::Span;

Boxes narrowed(Boxes boxes, const Row& row, const Span& limits_mm) {
    if (boxes.none()) return boxes;
    // Division finds the ends but for a hair; the lengths themselves, by which all else goes, settle them.
    const auto boxes_in = [&](double length_mm) {
        const double whole = std::floor((length_mm - 2 * row.edge_mm + row.between_mm) / (row.box_mm + row.between_mm));
        return std::clamp(whole, boxes.first - 1, boxes.last);
    };
    double last = boxes_in(limits_mm.high);
    while (last < boxes.last && row.length_mm(last + 1) <= limits_mm.high + same_length_mm) ++last;
    while (last >= boxes.first && row.length_mm(last) > limits_mm.high + same_length_mm) --last;
    double first = boxes_in(limits_mm.low) + 1;
    while (first > boxes.first && row.length_mm(first - 1) >= limits_mm.low - same_length_mm) --first;
    while (first <= boxes.last && row.length_mm(first) < limits_mm.low - same_length_mm) ++first;
    return {first, last};
}

const Converter* folds_before_cutting(const Route& route) {
    if (route.die_cutter() == nullptr) return nullptr;
    for (std::size_t step = 1; step < route.parting; ++step)
        if (route.converters[step - 1]->kind == Converter::Kind::folder_gluer) return route.converters[step - 1];
    return nullptr;
}

SheetRule sheet_rule(const Blank& blank, const Route& route) {
    const Converter* die_cutter = route.die_cutter();
    if (die_cutter == nullptr) return {{blank.length_mm, 0, 0}, {blank.width_mm, 0, 0}, 1};
    return {{blank.length_mm, die_cutter->between_mm, die_cutter->edge_mm},
            {blank.width_mm, die_cutter->between_mm, die_cutter->edge_mm},
            folds_before_cutting(route) != nullptr ? 1 : die_cutter->ups_max};
}

bool takes_blank(const Route& route, const Blank& blank) {
    for (std::size_t step = route.parting + 1; step <= route.last_step(); ++step) {
        const Converter& converter = *route.converters[step - 1];
        if (!is_within(blank.length_mm, converter.length_mm) || !is_within(blank.width_mm, converter.width_mm))
            return false;
    }
    return true;
}

}  // namespace flutebook::geometry
