// A drawing as plain shapes in mm: of a blank, a sheet, a web, a folded box. Every mark has a name, which says in words
// what the picture shows there. A renderer decides colours, hatches and how large letters are.
//
// x runs to the right, y downwards. Board is warm, what is lost is hatched by its cause.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace flutebook::render {

struct DrawnPoint {
    double x_mm, y_mm;
};

struct DrawnPolygon {
    enum class Kind { board, lost, joined };
    enum class Edge { drawn, none };  // none: where lines are drawn along it
    Kind kind;
    std::vector<DrawnPoint> outline;  // corners in turn; the last joins the first
    std::string name;
    std::string cause = {};                           // of what is lost: "side-trim"
    std::vector<std::vector<DrawnPoint>> holes = {};  // of what stays
    double shade = 0;                                 // of a face that is turned from the light, 0 to 1
    Edge edge = Edge::drawn;
};

struct DrawnLine {
    enum class Kind { cut, crease, slot };
    Kind kind;
    DrawnPoint from, to;
    std::string name;
};

/// On the board around `middle`; left out where it does not fit into `room_mm`.
struct DrawnText {
    DrawnPoint middle;
    std::string text;
    double room_mm;
};

/// A length along x or y, drawn outside the board. Lane 0 is the nearest.
struct DrawnDimension {
    enum class Side { below, left };
    Side side;
    std::size_t lane;
    double from_mm, to_mm;
    std::string text, name;
};

/// A direction that the board has, told above the picture.
struct DrawnArrow {
    enum class Direction { up_and_down, left_and_right, to_the_right };
    Direction direction;
    std::string text;
};

struct Drawing {
    /// Of a page's row: two of half a width take the room of a whole one.
    enum class Width { whole, half };
    std::string title;
    std::string note = {};                    // a sentence for who reads the picture
    std::vector<DrawnPolygon> polygons = {};  // what stands later covers what stands before
    std::vector<DrawnLine> lines = {};
    std::vector<DrawnText> texts = {};
    std::vector<DrawnDimension> dimensions = {};
    std::vector<DrawnArrow> arrows = {};
    Width width = Width::whole;
};

/// Drawings that stand side by side where a page is wide enough.
struct Drawings {
    std::vector<Drawing> items;
};

}  // namespace flutebook::render
