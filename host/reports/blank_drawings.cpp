#include "host/reports/blank_drawings.hpp"

#include "host/reports/flat_drawing.hpp"
#include "host/reports/folded_drawing.hpp"

namespace flutebook::reports {

render::Drawings blank_drawings(const ShownUnits& units, const std::vector<geometry::FlatBlank>& blanks) {
    render::Drawings result;
    for (const geometry::FlatBlank& blank : blanks) {
        result.items.push_back(flat_drawing(units, blank));
        if (blank.fold.empty()) continue;
        result.items.push_back(closed_drawing(blank));
        result.items.push_back(half_open_drawing(blank));
    }
    return result;
}

}  // namespace flutebook::reports
