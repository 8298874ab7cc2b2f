// What waste costs, and what the next best ways would have cost.
#include <cstdint>

#include "host/render/number_text.hpp"
#include "host/render/table.hpp"
#include "host/reports/mass_figures.hpp"
#include "host/reports/sections.hpp"

namespace flutebook::reports {

namespace {

using services::Quote;
using services::StepWaste;

}  // namespace

std::string waste_section(const SheetContext& enquiry, const Quote& quote) {
    const ShownUnit& mass = enquiry.units.mass;
    const MassFigures all = mass_figures(quote, mass.scale, mass.decimals);
    render::Table table({render::Align::flexible, render::Align::right, render::Align::right, render::Align::right,
                         render::Align::right},
                        2);
    table.add({"", "intake " + mass.name, "lost " + mass.name, "of intake", enquiry.units.currency});
    std::int64_t intake = all.issued + all.adhesive;
    for (std::size_t step = 0; step < quote.waste_by_step.size(); ++step) {
        const StepWaste& step_waste = quote.waste_by_step[step];
        const std::int64_t lost = step < all.by_step.size() ? all.by_step[step] : 0;  // dispatch loses nothing
        const double share = step_waste.intake_kg > 0 ? step_waste.loss_kg / step_waste.intake_kg : 0;
        table.add({step_waste.step_name, all.text(intake), all.text(lost), render::percent_text(share, 2),
                   render::money_text(step_waste.cost)});
        intake -= lost;
    }
    table.stroke({2, 4});
    table.add({"cost of waste (ISO 14051)", "", all.text(all.lost), "", render::money_text(quote.waste_cost)});
    table.add({"beside it, what recovery brings", "", "", "", render::money_text(quote.recovery)});
    return "Waste\n" + table.text();
}

std::string runners_up_section(const SheetContext& enquiry, const Quote& quote) {
    std::string result = "Next best ways\n";
    if (quote.runners_up.empty()) return result + "  none: this is the only way to make it here\n";
    render::Table table({render::Align::flexible, render::Align::right, render::Align::right}, 2);
    table.add({"", "cost " + enquiry.units.currency, "dearer by"});
    for (const services::RunnerUp& runner_up : quote.runners_up)
        table.add({runner_up.candidate, render::money_text(runner_up.cost), render::money_text(runner_up.dearer_by)});
    return result + table.text();
}

}  // namespace flutebook::reports
