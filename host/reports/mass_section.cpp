// Mass in, mass out, by cause.
#include <algorithm>

#include "host/render/table.hpp"
#include "host/reports/mass_figures.hpp"
#include "host/reports/sections.hpp"

namespace flutebook::reports {

std::string mass_section(const SheetContext& enquiry, const services::Quote& quote) {
    const ShownUnit& mass = enquiry.units.mass;
    const std::vector<LostMass> losses = losses_of(quote);
    const MassFigures kg = mass_figures(quote, mass.scale, mass.decimals);
    const MassFigures share = mass_figures(quote, 100 / std::max(quote.mass.issued_kg, 1e-300), 2);

    render::Table table({render::Align::flexible, render::Align::left, render::Align::right, render::Align::right}, 2);
    const auto add = [&](const std::string& title, const std::string& where, std::int64_t weighed, std::int64_t part) {
        table.add({title, where, kg.text(weighed), share.text(part) + " %"});
    };
    table.add({"", "", mass.name, "of paper issued"});
    add("paper issued", "", kg.issued, share.issued);
    add("adhesive, dry", "", kg.adhesive, share.adhesive);
    table.stroke({2, 3});
    add("in", "", kg.issued + kg.adhesive, share.issued + share.adhesive);
    table.say("");
    for (std::size_t i = 0; i < losses.size(); ++i)
        add(losses[i].title, losses[i].step ? machine_at(quote, *losses[i].step) : "", kg.losses[i], share.losses[i]);
    table.stroke({2, 3});
    add("lost", "", kg.lost, share.lost);
    add(enquiry.pieces() + " shipped", "", kg.product, share.product);
    table.stroke({2, 3});
    add("out", "", kg.lost + kg.product, share.lost + share.product);
    return "Mass\n" + table.text();
}

}  // namespace flutebook::reports
