// The box stands with its height upright and its length to the right, as far as the style says which cells those are
// measured between.
#include "host/drawings/folded_drawing.hpp"

#include <cmath>

#include "host/blanks/fold.hpp"
#include "host/drawings/painter.hpp"

namespace flutebook::drawings {

namespace {

using blanks::FlatBlank;
using blanks::FoldedFace;
using blanks::Vec3;
using render::Drawing;
using render::DrawnPoint;
using render::DrawnPolygon;

// The reader looks from the front, from the right and from above.
constexpr double from_right = 0.55, from_front = 0.70, from_above = 0.46;
constexpr double darkest = 0.30;  // of a face that is square to the light
constexpr double inside_is_darker = 0.10;
constexpr double layers_of_board = 3.2;  // faces nearer than this lie on one another

Vec3 unit(const Vec3& direction) {
    return (1 / length(direction)) * direction;
}

// Upright and to the right, in the frame of the fold.
struct Stance {
    Vec3 up{0, 0, 1}, right{1, 0, 0};
};

double all_steps(const FlatBlank& blank) {
    return static_cast<double>(blank.fold.size());
}

// The inside of the cell that an inside dimension is measured from looks along it.
Stance stance_of(const FlatBlank& blank) {
    Stance result;
    const std::vector<FoldedFace> faces = blanks::folded_faces(blank, all_steps(blank));
    if (blank.inside[2]) result.up = faces[blank.inside[2]->from].normal;
    if (blank.inside[0]) result.right = faces[blank.inside[0]->from].normal;
    Vec3 right = result.right - dot(result.right, result.up) * result.up;
    if (length(right) < 0.1) {
        const Vec3 other = std::abs(result.up.x) < 0.9 ? Vec3{1, 0, 0} : Vec3{0, 1, 0};
        right = other - dot(other, result.up) * result.up;
    }
    result.right = unit(right);
    return result;
}

View view_of(const Stance& stance) {
    const Vec3 front = cross(stance.right, stance.up);
    const Vec3 nearer = unit(from_right * stance.right + from_front * front + from_above * stance.up);
    const Vec3 right = unit(cross(stance.up, nearer));
    return {right, -1.0 * cross(nearer, right), nearer};
}

double shade_of(const FoldedFace& face, const Stance& stance, const View& view) {
    const Vec3 light = unit(0.25 * stance.right + 0.5 * cross(stance.right, stance.up) + 0.9 * stance.up);
    const bool is_inside_seen = dot(face.normal, view.nearer) > 0;
    return darkest * (1 - std::abs(dot(face.normal, light))) + (is_inside_seen ? inside_is_darker : 0);
}

std::vector<DrawnPoint> seen(const std::vector<Vec3>& outline, const View& view) {
    std::vector<DrawnPoint> result;
    for (const Vec3& point : outline) result.push_back({dot(point, view.right), dot(point, view.down)});
    return result;
}

// A joined cell comes before what is folded with it: a tab lies on the inside of its partner.
std::size_t turn_of(const FlatBlank& blank, std::size_t cell) {
    for (std::size_t step = 0; step < blank.fold.size(); ++step)
        for (const std::size_t folded : blank.fold[step])
            if (folded == cell) return 2 * step + (blank.cells[cell].is_joined ? 1 : 2);
    return 0;
}

Drawing drawing_after(const FlatBlank& blank, double steps_done, std::string title) {
    const Stance stance = stance_of(blank);
    const View view = view_of(stance);
    std::vector<PaintedFace> faces;
    for (FoldedFace& face : blanks::folded_faces(blank, steps_done)) {
        const std::size_t turn = turn_of(blank, face.cell);
        faces.push_back({std::move(face), turn});
    }
    Drawing drawing{std::move(title)};
    drawing.width = Drawing::Width::half;
    for (const std::size_t i : painting_order(faces, view, layers_of_board * blank.caliper_mm)) {
        const FoldedFace& face = faces[i].face;
        const blanks::FlatCell& cell = blank.cells[face.cell];
        DrawnPolygon polygon{cell.is_joined ? DrawnPolygon::Kind::joined : DrawnPolygon::Kind::board,
                             seen(face.outline, view),
                             cell.name + (dot(face.normal, view.nearer) > 0 ? ", its inside" : ", its outside")};
        for (const std::vector<Vec3>& hole : face.holes) polygon.holes.push_back(seen(hole, view));
        polygon.shade = shade_of(face, stance, view);
        drawing.polygons.push_back(std::move(polygon));
    }
    return drawing;
}

std::string of_piece(const FlatBlank& blank, const char* state) {
    return blank.piece.empty() ? std::string("Box, ") + state : blank.piece + ", " + state;
}

}  // namespace

Drawing closed_drawing(const FlatBlank& blank) {
    return drawing_after(blank, all_steps(blank), of_piece(blank, "folded"));
}

Drawing half_open_drawing(const FlatBlank& blank) {
    const double steps = all_steps(blank);
    return drawing_after(blank, steps < 2 ? steps / 2 : steps - 1.5, of_piece(blank, "half open"));
}

}  // namespace flutebook::drawings
