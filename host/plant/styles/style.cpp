// What follows from a style before any size is known.
#include "host/plant/styles/style.hpp"

#include <algorithm>

namespace flutebook::plant {

bool Style::is_folded() const {
    return std::any_of(pieces.begin(), pieces.end(), [](const StylePiece& piece) { return !piece.fold.empty(); });
}

}  // namespace flutebook::plant
