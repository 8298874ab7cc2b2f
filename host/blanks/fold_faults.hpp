// What goes wrong while a blank is folded, and where its joints come to lie; then what is wrong with the box.
#pragma once

#include <vector>

#include "host/blanks/proof.hpp"

namespace flutebook::blanks {

/// Cells that land on one another in one step, or pass through one another at the end of a step.
void add_collisions(const FlatBlank& blank, std::vector<FoldingFault>& faults);

/// Joined cells that miss their partners.
void add_open_joints(const FoldedBlank& folded, std::vector<FoldingFault>& faults);

/// Sides that are not as long as asked for, or not square to one another.
void add_wrong_sizes(const FoldedBlank& folded, const BoxAxes& axes, SizeBounds bounds,
                     std::vector<FoldingFault>& faults);

/// Cells that stand in the inside or out of the box.
void add_strays(const FoldedBlank& folded, const BoxAxes& axes, std::vector<FoldingFault>& faults);

/// Faces that are open or covered otherwise than the style says.
void add_wrong_covers(const FoldedBlank& folded, const BoxAxes& axes, std::vector<FoldingFault>& faults);

/// A box that has the side outside which the drawing shows as its inside: every angle has the wrong sign.
void add_wrong_side(const FoldedBlank& folded, const BoxAxes& axes, std::vector<FoldingFault>& faults);

}  // namespace flutebook::blanks
