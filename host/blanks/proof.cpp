// Combines the proofs of the pieces, and checks pieces that fit over one another.
#include "host/blanks/proof.hpp"

#include <fmt/format.h>

#include "host/blanks/fold_faults.hpp"

namespace flutebook::blanks {

namespace {

constexpr double clash_min_mm = 0.01;

BoxAxes folded_axes(const FlatBlank& blank) {
    return box_axes(folded(blank, static_cast<double>(blank.fold.size())));
}

PieceProof measured(const FlatBlank& blank, const BoxAxes& axes) {
    PieceProof proof;
    for (std::size_t side = 0; side < 3; ++side) {
        proof.walls_mm[side] = blank.walls_mm[side];
        if (!axes[side]) continue;
        proof.inside_mm[side] = axes[side]->inside(blank.caliper_mm);
        if (!proof.walls_mm[side]) proof.walls_mm[side] = walls_mm(*axes[side], blank.size_mm[side], blank.caliper_mm);
    }
    return proof;
}

void add_misfits(const FlatBlank& outer, const BoxAxes& outer_axes, const FlatBlank& inner, const BoxAxes& inner_axes,
                 std::vector<FoldingFault>& faults) {
    for (const std::size_t side : {std::size_t{0}, std::size_t{1}}) {
        if (!outer_axes[side] || !inner_axes[side]) continue;
        const double clear = outer_axes[side]->inside(outer.caliper_mm).pushed_in_mm;
        const double takes = inner_axes[side]->outside_mm(inner.caliper_mm);
        if (takes - clear <= clash_min_mm) continue;
        faults.push_back({FoldingFault::Kind::fit,
                          outer.piece,
                          {},
                          {},
                          takes - clear,
                          fmt::format("does not go over {}: {} is {:.1f} mm inside and {:.1f} mm are needed, {:.1f} mm "
                                      "too little",
                                      inner.piece, side == 0 ? "L" : "B", clear, takes, takes - clear)});
    }
}

void add_piece_faults(const FlatBlank& blank, const BoxAxes& axes, SizeBounds bounds,
                      std::vector<FoldingFault>& faults) {
    const FoldedBlank box = folded(blank, static_cast<double>(blank.fold.size()));
    add_collisions(blank, faults);
    add_open_joints(box, faults);
    add_wrong_sizes(box, axes, bounds, faults);
    add_strays(box, axes, faults);
    add_wrong_covers(box, axes, faults);
    add_wrong_side(box, axes, faults);
}

}  // namespace

FoldingProof prove(const std::vector<FlatBlank>& blanks, SizeBounds bounds) {
    FoldingProof proof;
    std::vector<BoxAxes> axes;
    for (const FlatBlank& blank : blanks) {
        axes.push_back(folded_axes(blank));
        proof.pieces.push_back(measured(blank, axes.back()));
        add_piece_faults(blank, axes.back(), bounds, proof.faults);
    }
    for (std::size_t outer = 0; outer < blanks.size(); ++outer)
        if (const std::optional<std::size_t> inner = blanks[outer].over)
            add_misfits(blanks[outer], axes[outer], blanks[*inner], axes[*inner], proof.faults);
    for (FoldingFault& fault : proof.faults)
        if (!fault.piece.empty()) fault.text = fault.piece + ": " + fault.text;
    return proof;
}

std::array<std::optional<double>, 3> folded_walls_mm(const FlatBlank& blank) {
    return measured(blank, folded_axes(blank)).walls_mm;
}

}  // namespace flutebook::blanks
