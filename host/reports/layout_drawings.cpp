// x runs along the web, y across it with the flutes, as the blank is drawn.
#include "host/reports/layout_drawings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "host/drawings/drawing_shapes.hpp"
#include "host/render/number_text.hpp"

namespace flutebook::reports {

namespace {

using answers::Quote;
using render::Drawing;
using render::DrawnArrow;
using render::DrawnDimension;
using Side = DrawnDimension::Side;

constexpr double web_shape = 1.5;       // length of the web that is drawn, of its width
constexpr double most_sheets = 6;       // along the web that is drawn
constexpr double least_loss_mm = 0.05;  // a strip narrower than this is not drawn
constexpr double most_outlines = 200;   // more than a picture can show are drawn as one

double beyond_blanks(double sheet_mm, double blanks, double blank_mm) {
    return sheet_mm - blanks * blank_mm;
}

// Sizes in a row: edge, blank, between, blank, ..., edge; those that are nothing are left out.
std::vector<double> row_of_sizes(double blanks, double blank_mm, const SheetGaps& gaps) {
    std::vector<double> result = {gaps.edge_mm};
    for (double i = 0; i < blanks; ++i) {
        if (i > 0) result.push_back(gaps.between_mm);
        result.push_back(blank_mm);
    }
    result.push_back(gaps.edge_mm);
    result.erase(std::remove_if(result.begin(), result.end(), [](double size) { return size < least_loss_mm; }),
                 result.end());
    return result;
}

void add_blanks(Drawing& drawing, const SheetContext& context, const Quote& quote, const SheetGaps& gaps) {
    const blanks::Blank& blank = quote.blank;
    if (quote.ups > most_outlines) {
        drawing.polygons.push_back(
            drawings::board_rectangle({gaps.edge_mm, gaps.edge_mm}, quote.chop_mm - 2 * gaps.edge_mm,
                                      quote.slit_mm - 2 * gaps.edge_mm, fmt::format("{:.0f} blanks", quote.ups)));
        return;
    }
    for (double row = 0; row < quote.ny; ++row)
        for (double column = 0; column < quote.nx; ++column) {
            const double x = gaps.edge_mm + column * (blank.length_mm + gaps.between_mm);
            const double y = gaps.edge_mm + row * (blank.width_mm + gaps.between_mm);
            const double number = row * quote.nx + column + 1;
            drawing.polygons.push_back(drawings::board_rectangle(
                {x, y}, blank.length_mm, blank.width_mm,
                fmt::format("{} {}: {}", context.pieces() == "sheets" ? "sheet" : "blank", number,
                            context.units.lengths({blank.length_mm, blank.width_mm}))));
            drawing.texts.push_back({{x + blank.length_mm / 2, y + blank.width_mm / 2},
                                     fmt::format("{}", number),
                                     std::min(blank.length_mm, blank.width_mm)});
        }
}

void add_sheets(Drawing& drawing, const drawings::ShownUnits& units, const Quote& quote, double sheets) {
    const double trim = quote.trim_mm / 2, length = sheets * quote.chop_mm;
    if (quote.outs * sheets > most_outlines) {
        drawing.polygons.push_back(drawings::board_rectangle({0, trim}, length, quote.outs * quote.slit_mm,
                                                             fmt::format("{:.0f} outs", quote.outs)));
        return;
    }
    for (double out = 0; out < quote.outs; ++out) {
        const double y = trim + out * quote.slit_mm;
        for (double sheet = 0; sheet < sheets; ++sheet)
            drawing.polygons.push_back(drawings::board_rectangle(
                {sheet * quote.chop_mm, y}, quote.chop_mm, quote.slit_mm,
                fmt::format("out {}: sheet of {}", out + 1, units.lengths({quote.chop_mm, quote.slit_mm}))));
        drawing.texts.push_back({{quote.chop_mm / 2, y + quote.slit_mm / 2},
                                 fmt::format("{}", out + 1),
                                 std::min(quote.chop_mm, quote.slit_mm)});
    }
}

// Both edges of the web.
void add_trim(Drawing& drawing, const drawings::ShownUnits& units, const Quote& quote, double length) {
    const double trim = quote.trim_mm / 2;
    const std::string name = "side trim, " + units.length(trim) + " at each edge";
    for (const double y : {0.0, quote.roll_width_mm - trim})
        drawing.polygons.push_back(drawings::lost_rectangle({0, y}, length, trim, "side-trim", name));
}

}  // namespace

SheetGaps sheet_gaps(const plant::Plant& plant, const Quote& quote) {
    const double along = beyond_blanks(quote.chop_mm, quote.nx, quote.blank.length_mm);
    const double across = beyond_blanks(quote.slit_mm, quote.ny, quote.blank.width_mm);
    if (quote.nx != quote.ny) {
        const double between = (along - across) / (quote.nx - quote.ny);
        return {std::max(0.0, between), std::max(0.0, (along - (quote.nx - 1) * between) / 2), true};
    }
    if (quote.nx == 1) return {0, along / 2, true};
    for (const std::string& code : quote.route) {
        const plant::Converter* converter = plant.find_converter(code);
        if (converter == nullptr) continue;
        const double expected = (quote.nx - 1) * converter->between_mm + 2 * converter->edge_mm;
        if (std::abs(expected - along) < least_loss_mm) return {converter->between_mm, converter->edge_mm, true};
    }
    const double even = along / (quote.nx + 1);
    return {even, even, false};
}

Drawing sheet_drawing(const SheetContext& context, const Quote& quote) {
    const SheetGaps gaps = sheet_gaps(context.plant, quote);
    Drawing drawing{quote.ups > 1 ? fmt::format("Sheet: {:.0f} {}", quote.ups, context.pieces())
                                  : std::string("Sheet: the blank itself")};
    const bool has_gaps = std::max(gaps.between_mm, gaps.edge_mm) >= least_loss_mm;
    if (has_gaps && quote.ups <= 1) drawing.title = "Sheet: one box";
    drawing.note = fmt::format("in {}{}", context.units.length_unit,
                               has_gaps ? "; hatched: cut out between blanks and at the edges" : "");
    drawing.arrows.push_back({DrawnArrow::Direction::up_and_down, "flutes"});
    if (has_gaps)
        drawing.polygons.push_back(drawings::lost_rectangle({0, 0}, quote.chop_mm, quote.slit_mm, "cut-out",
                                                            "cut out between blanks and at the edges"));
    add_blanks(drawing, context, quote, gaps);
    const bool are_told = gaps.is_known || !has_gaps;
    const auto sizes = [&](double blanks, double blank_mm) {
        return are_told ? row_of_sizes(blanks, blank_mm, gaps) : std::vector<double>{};
    };
    drawings::add_chain(drawing, context.units, Side::below, sizes(quote.nx, quote.blank.length_mm), quote.chop_mm,
                        "chop");
    drawings::add_chain(drawing, context.units, Side::left, sizes(quote.ny, quote.blank.width_mm), quote.slit_mm,
                        "slit width");
    return drawing;
}

Drawing web_drawing(const SheetContext& context, const Quote& quote) {
    const double sheets = std::clamp(std::round(web_shape * quote.roll_width_mm / quote.chop_mm), 1.0, most_sheets);
    const drawings::ShownUnits& units = context.units;
    Drawing drawing{fmt::format("Web: {:.0f} {} of a roll of {}", quote.outs, quote.outs == 1 ? "out" : "outs",
                                units.exact_length(quote.roll_width_mm))};
    drawing.note = fmt::format("in {}; {}", units.length_unit,
                               quote.trim_mm < least_loss_mm
                                   ? "no trim"
                                   : fmt::format("hatched: trim, {} of the roll width",
                                                 render::percent_text(quote.trim_mm / quote.roll_width_mm, 2)));
    drawing.arrows = {{DrawnArrow::Direction::to_the_right, "the web runs this way"},
                      {DrawnArrow::Direction::up_and_down, "flutes"}};
    add_sheets(drawing, units, quote, sheets);
    std::vector<double> across;
    if (quote.outs <= most_outlines) across.assign(static_cast<std::size_t>(quote.outs), quote.slit_mm);
    if (quote.trim_mm >= least_loss_mm) {
        add_trim(drawing, units, quote, sheets * quote.chop_mm);
        across.insert(across.begin(), quote.trim_mm / 2);
        across.push_back(quote.trim_mm / 2);
    }
    drawings::add_chain(drawing, units, Side::left, across, quote.roll_width_mm, "roll width");
    drawings::add_dimension(drawing, units, {Side::below, 0}, 0, quote.chop_mm, "chop");
    return drawing;
}

}  // namespace flutebook::reports
