// Blanks drawn by hand for tests of folding: rectangles that hang on one another's edges.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "host/blanks/flat.hpp"

namespace flutebook::fixture {

/// left, top, right, bottom on the flat blank.
using DrawnCell = std::array<double, 4>;

class DrawnBlank {
public:
    /// Begins with the cell that stays.
    DrawnBlank(double caliper_mm, const std::string& name, const DrawnCell& rectangle);

    /// A cell on the edge that it shares with `parent`.
    DrawnBlank& hang(const std::string& name, const std::string& parent, const DrawnCell& rectangle, double angle = 90);
    /// One more step of the fold.
    DrawnBlank& step(const std::vector<std::string>& names);
    DrawnBlank& join(const std::string& name, const std::string& partner);
    /// 0, 1, 2: L, B, H. An empty `to` is the rim.
    DrawnBlank& inside(std::size_t side, const std::string& from, const std::string& to, double size_mm);

    [[nodiscard]] std::size_t at(const std::string& name) const;

    blanks::FlatBlank blank;
};

/// What drawing a slotted box takes; mm. The caliper is 3, the slots are 6.
struct SlottedSizes {
    double length = 400, breadth = 300, height = 250;
    double flap = 151.5, outer_flap = 151.5;  // depth of the flaps on the ends and on the sides
};

/// 0201 in a board of flute B, as the demo's allowances draw it: folds.
[[nodiscard]] DrawnBlank slotted_box(const SlottedSizes& sizes = {});

}  // namespace flutebook::fixture
