// The answers about box styles: which there are, one at a size with the figures of its blanks, and whether styles fold.
// Plain values.
#pragma once

#include <string>
#include <vector>

#include "host/blanks/flat_measures.hpp"
#include "host/box_styles/style.hpp"

namespace flutebook::plant_answers {

struct ListedStyle {
    std::string code, title, note;
    std::vector<std::vector<box_styles::Stage>> made_by;  // by piece
    std::vector<std::string> pieces;                      // their names; one empty name of a style of one
    std::vector<box_styles::AskedMeasure> asks;
};

struct StyleListAnswer {
    std::vector<ListedStyle> styles;
};

/// One blank of a style at a size.
struct ShownPiece {
    std::vector<box_styles::Stage> made_by;
    blanks::FlatBlank blank;
    blanks::FlatMeasures measures;
};

struct ShownStyle {
    std::string code, title, note;
    std::string board;
    std::vector<double> inside_mm;
    std::vector<std::pair<std::string, double>> measures;  // as they were given
    std::vector<ShownPiece> pieces;
};

}  // namespace flutebook::plant_answers
