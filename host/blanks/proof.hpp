// The proof that a style folds into the box that was asked for: each blank is folded step by step, and what collides,
// where and by how much, is told.
//
// It looks at the end of each step, not at the way there. Board has its thickness in distances alone. Nothing is seen
// of parts narrower than 3.2 thicknesses that cut through another cell.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "host/blanks/flat.hpp"
#include "host/blanks/folded_box.hpp"

namespace flutebook::blanks {

/// One thing that keeps a style from being the box that was asked for.
struct FoldingFault {
    enum class Kind {
        landing,  // two cells folded in one step lie on one another
        cutting,  // two cells pass through one another
        size,     // the inside is not what was asked for
        reach,    // a cell stands in the inside, or out of the box
        cover,    // a face is covered otherwise than the style says
        joint,    // a joined cell does not lie on its partner
        fit,      // a piece does not go over another
        side,     // the box is turned inside out
    };
    Kind kind;
    std::string piece;                // empty: the style is one piece
    std::optional<std::size_t> step;  // index into FlatBlank::fold; nothing: the folded box
    std::vector<std::size_t> cells;   // of the piece: where it is
    double amount;                    // mm; of cover, the share that is covered too much, or too little below 0
    std::string text;                 // the whole sentence, with piece, place and amount
};

/// How far the inside may be off: what a plant writes itself, with all layers pushed out, by up to 3 t + 1 mm; what the
/// program brings, in the middle between pushed in and out, by up to t + 1 mm. Neither may be too small when pushed
/// out.
enum class SizeBounds { plant, library };

/// What folding one piece showed.
struct PieceProof {
    std::array<std::optional<InsideRange>, 3> inside_mm;  // L, B, H, where the style says how each is measured
    std::array<std::optional<double>, 3> walls_mm;        // outside less inside: by the style, or as folded
};

struct FoldingProof {
    std::vector<PieceProof> pieces;  // as the blanks
    std::vector<FoldingFault> faults;

    [[nodiscard]] bool holds() const { return faults.empty(); }
};

/// Folds all pieces of a style at one size.
[[nodiscard]] FoldingProof prove(const std::vector<FlatBlank>& blanks, SizeBounds bounds = SizeBounds::plant);

/// Outside less inside of L, B and H, for a request that gives outside dimensions; nothing where it is not known.
[[nodiscard]] std::array<std::optional<double>, 3> folded_walls_mm(const FlatBlank& blank);

}  // namespace flutebook::blanks
