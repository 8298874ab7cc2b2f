// A box as it stands folded, or half open: the faces of its blank in space, seen from above one corner.
#pragma once

#include <string>

#include "host/blanks/flat.hpp"
#include "host/render/drawing.hpp"

namespace flutebook::drawings {

/// After all steps of the fold.
[[nodiscard]] render::Drawing closed_drawing(const blanks::FlatBlank& blank);

/// In the middle of the last step but one, so that the inside is seen; of a blank with one step, in its middle.
[[nodiscard]] render::Drawing half_open_drawing(const blanks::FlatBlank& blank);

}  // namespace flutebook::drawings
