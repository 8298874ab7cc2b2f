#include "host/drawings/blank_drawings.hpp"

#include "host/drawings/flat_drawing.hpp"
#include "host/drawings/folded_drawing.hpp"

namespace flutebook::drawings {

render::Drawings blank_drawings(const ShownUnits& units, const std::vector<blanks::FlatBlank>& blanks) {
    render::Drawings result;
    for (const blanks::FlatBlank& blank : blanks) {
        result.items.push_back(flat_drawing(units, blank));
        if (blank.fold.empty()) continue;
        result.items.push_back(closed_drawing(blank));
        result.items.push_back(half_open_drawing(blank));
    }
    return result;
}

}  // namespace flutebook::drawings
