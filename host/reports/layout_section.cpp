// Layout and run: what the floor would draw, and what it would count.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "host/render/number_text.hpp"
#include "host/render/table.hpp"
#include "host/render/text.hpp"
#include "host/reports/sections.hpp"

namespace flutebook::reports {

namespace {

using services::Quote;

std::string sheet_text(const SheetContext& enquiry, const Quote& quote) {
    const ShownUnits& units = enquiry.units;
    const std::string size = fmt::format("chop {} x slit {}", units.length(quote.chop_mm), units.length(quote.slit_mm));
    if (enquiry.pieces() == "sheets") return size;
    if (quote.ups <= 1) return size + ", one box a sheet";
    return fmt::format("{}, {} boxes a sheet: {} along the chop x {} across the web", size, quote.ups, quote.nx,
                       quote.ny);
}

std::string web_text(const ShownUnits& units, const Quote& quote) {
    return fmt::format("roll {}, {} {}, trim {} ({} of the roll width)", units.length(quote.roll_width_mm), quote.outs,
                       quote.outs == 1 ? "out" : "outs", units.length(quote.trim_mm),
                       render::percent_text(quote.trim_mm / quote.roll_width_mm, 2));
}

double lost_kg(const Quote& quote, const std::string& cause, std::size_t step) {
    for (const auto& loss : quote.mass.losses)
        if (loss.cause == cause && step < loss.by_step_kg.size()) return loss.by_step_kg[step];
    return 0;
}

// Setup sheets and rejects of a step are pieces of one mass, so their masses stand as their numbers do.
double setup_pieces(const Quote& quote, std::size_t step) {
    const double setup_kg = lost_kg(quote, "setup", step);
    const double lost = setup_kg + lost_kg(quote, "rejects", step);
    return lost > 0 ? std::round((quote.fed[step] - quote.good[step]) * setup_kg / lost) : 0;
}

}  // namespace

std::string layout_section(const SheetContext& enquiry, const Quote& quote) {
    const ShownUnits& units = enquiry.units;
    const std::string box = enquiry.pieces() == "sheets" ? "sheet" : "box";
    const std::string blank = fmt::format("{}, {} of {}", units.lengths({quote.blank.length_mm, quote.blank.width_mm}),
                                          units.area.text(quote.blank.area_m2), box);
    return "Layout\n" +
           render::hanging("  board   ", fmt::format("{}, {}", enquiry.plant.boards[enquiry.request.board].code,
                                                     units.grammage.text(quote.board_grammage_gsm))) +
           render::hanging("  blank   ", blank) + render::hanging("  sheet   ", sheet_text(enquiry, quote)) +
           render::hanging("  web     ", web_text(units, quote)) + render::hanging("  route   ", route_text(quote));
}

std::string run_section(const SheetContext& enquiry, const Quote& quote) {
    render::Table table({render::Align::flexible, render::Align::right, render::Align::right, render::Align::right,
                         render::Align::right, render::Align::left},
                        2);
    table.add({"", "fed", "setup", "rejected", "good", ""});
    const std::size_t parting = parting_step(enquiry.plant, quote);
    for (std::size_t step = 0; step < quote.good.size(); ++step) {
        const bool are_sheets = step < parting || (step == parting && quote.ups > 1) || quote.route.empty();
        const std::string good = render::number_text(quote.good[step], 0);
        if (step == 0) {
            table.add(
                {machine_at(quote, 0), enquiry.units.web_length.text(quote.web_length_m), "", "", good, "sheets"});
            continue;
        }
        const double setup = setup_pieces(quote, step);
        table.add({machine_at(quote, step), render::number_text(quote.fed[step], 0), render::number_text(setup, 0),
                   render::number_text(quote.fed[step] - quote.good[step] - setup, 0), good,
                   are_sheets ? "sheets" : "boxes"});
    }
    return "Run\n" + table.text();
}

}  // namespace flutebook::reports
