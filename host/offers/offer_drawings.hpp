// The drawings of an offer: they show the box, and nothing about how the plant makes it.
#pragma once

#include <vector>

#include "host/blanks/flat.hpp"
#include "host/offers/offer_words.hpp"
#include "host/render/drawing.hpp"

namespace flutebook::offers {

/// Each blank that is folded, folded and half open; one that is not, as it lies. No part of a picture has a name, and
/// none has a measure: the names of cells, their creases and tabs are the style's.
[[nodiscard]] render::Drawings offer_drawings(const OfferWords& words, const std::vector<blanks::FlatBlank>& blanks);

}  // namespace flutebook::offers
