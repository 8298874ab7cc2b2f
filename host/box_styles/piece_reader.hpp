// One blank of a style from its YAML: its grid, its cells, how it folds and the size it must have.
#pragma once

#include <optional>
#include <vector>

#include "host/box_styles/style.hpp"
#include "host/box_styles/style_sums.hpp"
#include "host/fields/map_reader.hpp"

namespace flutebook::box_styles {

/// Reads the keys of a blank and leaves the map open: the caller finishes it. `scope` knows what the style asks and
/// lets; the piece's `let` is already in it.
[[nodiscard]] StylePiece read_piece(fields::MapReader& form, const SumScope& scope);

/// `let`, in order; each is added to the scope.
[[nodiscard]] std::vector<NamedSum> read_let(fields::MapReader& form, SumScope& scope);

/// `made_by`; nothing where it is left out.
[[nodiscard]] std::optional<std::vector<Stage>> read_made_by(fields::MapReader& form);

/// Orders the cells of a piece as a tree by its creases, from the one that no step folds. Complains of rings, of cells
/// that hang on nothing and of those that are folded by no step; returns whether it is a tree.
[[nodiscard]] bool hang_cells(const fields::Field& map, StylePiece& piece);

}  // namespace flutebook::box_styles
