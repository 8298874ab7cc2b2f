// Rectangles that hang on one another.
#include "tests/unit/blanks/drawn_blanks.hpp"

#include <algorithm>
#include <stdexcept>

namespace flutebook::fixture {

namespace {

blanks::FlatCell rectangle_cell(const std::string& name, const DrawnCell& box) {
    blanks::FlatCell cell;
    cell.name = name;
    cell.outline = {{box[0], box[1]}, {box[2], box[1]}, {box[2], box[3]}, {box[0], box[3]}};
    cell.hinge = {{0, 0}, {0, 0}};
    cell.angle_deg = 0;
    cell.is_plain = cell.is_joined = false;
    return cell;
}

DrawnCell bounds(const blanks::FlatCell& cell) {
    return {cell.outline[0].x, cell.outline[0].y, cell.outline[2].x, cell.outline[2].y};
}

// The edge on which `child` hangs: where it meets the parent's side.
blanks::Segment common_edge(const DrawnCell& parent, const DrawnCell& child) {
    const double left = std::max(parent[0], child[0]), right = std::min(parent[2], child[2]);
    const double top = std::max(parent[1], child[1]), bottom = std::min(parent[3], child[3]);
    if (child[0] == parent[2] || child[2] == parent[0]) {
        const double x = child[0] == parent[2] ? parent[2] : parent[0];
        return {{x, bottom}, {x, top}};
    }
    const double y = child[1] == parent[3] ? parent[3] : parent[1];
    return {{left, y}, {right, y}};
}

}  // namespace

DrawnBlank::DrawnBlank(double caliper_mm, const std::string& name, const DrawnCell& rectangle) {
    blank.count = 1;
    blank.length_mm = blank.width_mm = 0;
    blank.caliper_mm = caliper_mm;
    blank.size_mm = {0, 0, 0};
    blank.cover = {1, 1, 1, 1, 1, 1};
    blank.cells.push_back(rectangle_cell(name, rectangle));
}

DrawnBlank& DrawnBlank::hang(const std::string& name, const std::string& parent, const DrawnCell& rectangle,
                             double angle) {
    blanks::FlatCell cell = rectangle_cell(name, rectangle);
    cell.parent = at(parent);
    cell.hinge = common_edge(bounds(blank.cells[at(parent)]), rectangle);
    cell.angle_deg = angle;
    blank.cells.push_back(cell);
    return *this;
}

DrawnBlank& DrawnBlank::step(const std::vector<std::string>& names) {
    std::vector<std::size_t> cells;
    for (const std::string& name : names) cells.push_back(at(name));
    blank.fold.push_back(cells);
    return *this;
}

DrawnBlank& DrawnBlank::join(const std::string& name, const std::string& partner) {
    blank.joins.push_back({at(name), at(partner)});
    blank.cells[at(name)].is_joined = true;
    return *this;
}

DrawnBlank& DrawnBlank::inside(std::size_t side, const std::string& from, const std::string& to, double size_mm) {
    box_styles::InsideSpan span;
    span.from = at(from);
    if (!to.empty()) span.to = at(to);
    blank.inside[side] = span;
    blank.size_mm[side] = size_mm;
    return *this;
}

std::size_t DrawnBlank::at(const std::string& name) const {
    for (std::size_t i = 0; i < blank.cells.size(); ++i)
        if (blank.cells[i].name == name) return i;
    throw std::logic_error("no cell " + name);
}

DrawnBlank slotted_box(const SlottedSizes& sizes) {
    const double l = sizes.length + 3, b = sizes.breadth + 3, h = sizes.height + 6;
    const std::array<double, 5> x = {30, 30 + l, 30 + l + b, 30 + 2 * l + b, 30 + 2 * l + 2 * b - 2};
    const double top = std::max(sizes.flap, sizes.outer_flap), bottom = top + h;
    DrawnBlank box(3, "p1", {x[0], top, x[1], bottom});
    box.hang("tab", "p1", {0, top, 30, bottom});
    for (std::size_t i = 1; i < 4; ++i) {
        const std::string number = std::to_string(i + 1), before = std::to_string(i);
        box.hang("p" + number, "p" + before, {x[i], top, x[i + 1], bottom});
    }
    for (std::size_t i = 0; i < 4; ++i) {
        const std::string number = std::to_string(i + 1);
        const double depth = i % 2 == 0 ? sizes.outer_flap : sizes.flap;
        const double left = x[i] + (i == 0 ? 0 : 3), right = x[i + 1] - (i == 3 ? 0 : 3);
        box.hang("f" + number, "p" + number, {left, top - depth, right, top});
        box.hang("g" + number, "p" + number, {left, bottom, right, bottom + depth});
    }
    box.step({"tab", "p2", "p3", "p4"}).step({"g2", "g4"}).step({"g1", "g3"}).step({"f2", "f4"}).step({"f1", "f3"});
    box.join("tab", "p4");
    box.inside(0, "p2", "p4", sizes.length).inside(1, "p1", "p3", sizes.breadth).inside(2, "g2", "f2", sizes.height);
    return box;
}

}  // namespace flutebook::fixture
