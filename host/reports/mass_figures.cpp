#include "host/reports/mass_figures.hpp"

#include <numeric>

#include "host/base/parts.hpp"
#include "host/render/number_text.hpp"

namespace flutebook::reports {

std::vector<LostMass> losses_of(const services::Quote& quote) {
    std::vector<LostMass> made;
    for (const auto& cause : quote.mass.losses) {
        const std::size_t before = made.size();
        for (std::size_t step = 0; step < cause.by_step_kg.size(); ++step)
            if (cause.by_step_kg[step] != 0) made.push_back({cause.title, step, cause.by_step_kg[step]});
        if (made.size() == before) made.push_back({cause.title, std::nullopt, 0});
    }
    return made;
}

std::string MassFigures::text(std::int64_t units) const {
    return render::number_text(base::from_units(units, decimals), decimals);
}

MassFigures mass_figures(const services::Quote& quote, double scale, int decimals) {
    MassFigures made{decimals, 0, 0, 0, 0, {}, std::vector<std::int64_t>(quote.good.size(), 0)};
    made.issued = base::in_units(quote.mass.issued_kg * scale, decimals);
    made.adhesive = base::in_units(quote.mass.adhesive_kg * scale, decimals);
    std::vector<double> out = {quote.mass.product_kg * scale};
    const std::vector<LostMass> losses = losses_of(quote);
    for (const LostMass& own : losses) out.push_back(own.kg * scale);
    const std::vector<std::int64_t> parts = base::parts_of(made.issued + made.adhesive, out, decimals);
    made.product = parts.front();
    made.losses.assign(parts.begin() + 1, parts.end());
    made.lost = std::accumulate(made.losses.begin(), made.losses.end(), std::int64_t{0});
    for (std::size_t i = 0; i < losses.size(); ++i)
        if (losses[i].step) made.by_step[*losses[i].step] += made.losses[i];
    return made;
}

}  // namespace flutebook::reports
