// How a quote's boxes lie on their sheet and the sheets on the web, as drawings. They need the quote's own numbers
// alone, so a saved quote is drawn as it was.
#pragma once

#include "host/render/drawing.hpp"
#include "host/reports/sheet_context.hpp"

namespace flutebook::reports {

/// What lies between blanks on a sheet, and at its edges.
struct SheetGaps {
    double between_mm, edge_mm;
    bool is_known;  // else they are shared out evenly: the sheet's size does not tell them apart
};

/// From what the sheet measures beyond its blanks; where as many lie along as across, from the die cutter.
[[nodiscard]] SheetGaps sheet_gaps(const plant::Plant& plant, const answers::Quote& quote);

/// The sheet with its blanks; what lies between them and at the edges is hatched.
[[nodiscard]] render::Drawing sheet_drawing(const SheetContext& context, const answers::Quote& quote);

/// A few sheets' length of the web: its outs, and the trim at both edges hatched.
[[nodiscard]] render::Drawing web_drawing(const SheetContext& context, const answers::Quote& quote);

}  // namespace flutebook::reports
