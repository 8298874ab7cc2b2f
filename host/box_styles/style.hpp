// A box style as data: the drawn grid of a blank, how it folds, and the size that the folded box must have. Plain
// values, checked as far as no size is needed; host/geometry gives them a size.
//
// Lengths are sums in mm. `along` runs with the web, left to right; `across` runs with the flutes, top to bottom. The
// picture is the inside of the box: what folds by 90 degrees rises towards the reader.
#pragma once

#include <array>
#include <cstddef>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

#include "host/base/place.hpp"
#include "host/box_styles/machine_kind.hpp"

namespace flutebook::box_styles {

/// A sum as the file writes it: known names, one value. `place` is where it stands.
struct Sum {
    std::string text;
    base::Place place;
};

struct NamedSum {
    std::string name;
    Sum sum;
};

/// A further measure that a request may give under `measures`.
struct AskedMeasure {
    std::string name;
    Sum initial;    // counts where the request gives none
    Sum low, high;  // of its range
    std::string says;
};

/// The request is refused with `text` where `sum` is below 0.
struct Requirement {
    Sum sum;
    std::string text;
};

struct StyleHole {
    std::optional<Sum> count;                 // nothing: one; else repeated for i = 1 ..
    bool is_rectangle = false;                // `corners` are then its first corner and its size
    std::vector<std::array<Sum, 2>> corners;  // in u and v of its cell
};

/// One cell of the grid. A name that repeats in a rectangle is one cell.
struct StyleCell {
    std::string name;
    std::size_t first_column, last_column, first_row, last_row;
    std::optional<std::size_t> parent;  // the cell that it hangs on; nothing: the one that stays
    std::optional<Sum> depth;           // nothing: its column or row
    std::array<std::optional<Sum>, 2> inset, taper;
    std::vector<std::array<Sum, 2>> shape;  // corners in u and v; empty: the rectangle
    std::vector<StyleHole> holes;
    bool is_plain = false;  // not printed
    double angle_deg = 90;  // by which it is folded; 0 of the cell that stays
    base::Place place;      // in the map
};

/// Between two neighbouring cells, the left or upper one first.
struct StyleBorder {
    enum class Kind { crease, slot, cut };
    std::size_t first, second;
    Kind kind;
};

struct Join {
    std::size_t cell, partner;
};

/// The two cells between which an inside dimension is measured; without a second, up to the rim of an open top.
struct InsideSpan {
    std::size_t from;
    std::optional<std::size_t> to;
};

/// One blank: of a style of one piece, or of one of its pieces.
struct StylePiece {
    std::string name;  // empty: the style is one piece
    std::vector<Stage> made_by;
    std::vector<NamedSum> let;
    std::vector<Sum> along, across;
    std::vector<StyleCell> cells;  // a parent before its children
    std::vector<StyleBorder> borders;
    std::optional<Sum> slot;                     // width of a slot; nothing: the allowance
    std::vector<std::vector<std::size_t>> fold;  // cells by step
    std::vector<Join> joins;
    std::array<std::optional<InsideSpan>, 3> inside;  // L, B, H
    std::array<Sum, 3> size;                          // what they must come to
    std::array<Sum, 6> cover;                         // left right front back bottom top
    std::optional<Sum> count;                         // nothing: one
    std::optional<std::size_t> over;                  // index of the piece that goes into this one
    std::array<std::optional<Sum>, 3> walls;          // outside less inside
    base::Place place;
};

struct Style {
    std::string code, title, note;
    bool may_turn = false;
    bool is_outline = false;                            // the request gives the blank itself; it has no pieces
    bool uses_height = false, uses_allowances = false;  // some sum of it does
    std::vector<AskedMeasure> asks;
    std::vector<Requirement> requirements;
    std::vector<StylePiece> pieces;  // at least one but for an outline
    std::string text;                // its entry and those of the styles that it is like, as YAML, kept with a quote
    base::Place place;

    [[nodiscard]] bool is_folded() const;  // some cell is folded
    /// What a request may give under `measures`; null where the style does not ask for it.
    [[nodiscard]] const AskedMeasure* find_ask(const std::string& name) const;
};

/// The styles of a plant: the program's library, an entry of the plant's own in place of its namesake, then the plant's
/// further ones, then the outline. Never changed; copies share it.
class StyleList {
public:
    /// The library alone. Of the library a style is read when somebody asks for it, the whole when for all.
    StyleList() = default;
    explicit StyleList(std::vector<Style> plants);

    [[nodiscard]] auto begin() const { return all().begin(); }
    [[nodiscard]] auto end() const { return all().end(); }
    [[nodiscard]] std::size_t size() const { return all().size(); }
    [[nodiscard]] const Style& operator[](std::size_t index) const { return all()[index]; }
    /// Null where no style has the code. Lives as long as some copy of the list.
    [[nodiscard]] const Style* find(const std::string& code) const;

private:
    struct PlantStyles {
        std::vector<Style> plants;
        std::once_flag merging;
        std::vector<Style> all;  // with the library's, once somebody has asked for all
    };

    [[nodiscard]] const std::vector<Style>& all() const;

    std::shared_ptr<PlantStyles> styles_;  // null: the library alone
};

}  // namespace flutebook::box_styles
