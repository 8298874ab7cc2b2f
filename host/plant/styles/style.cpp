// What follows from a style before any size is known.
#include "host/plant/styles/style.hpp"

#include <algorithm>

namespace flutebook::plant {

bool Style::is_folded() const {
    return std::any_of(pieces.begin(), pieces.end(), [](const StylePiece& piece) { return !piece.fold.empty(); });
}

const AskedMeasure* Style::find_ask(const std::string& name) const {
    const auto found =
        std::find_if(asks.begin(), asks.end(), [&](const AskedMeasure& measure) { return measure.name == name; });
    return found == asks.end() ? nullptr : &*found;
}

}  // namespace flutebook::plant
