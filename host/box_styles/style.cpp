// What follows from a style before any size is known.
#include "host/box_styles/style.hpp"

#include <algorithm>

namespace flutebook::box_styles {

bool Style::is_folded() const {
    return std::any_of(pieces.begin(), pieces.end(), [](const StylePiece& piece) { return !piece.fold.empty(); });
}

const AskedMeasure* Style::find_ask(const std::string& name) const {
    const auto found =
        std::find_if(asks.begin(), asks.end(), [&](const AskedMeasure& measure) { return measure.name == name; });
    return found == asks.end() ? nullptr : &*found;
}

}  // namespace flutebook::box_styles
