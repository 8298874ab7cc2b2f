// Largest remainders: see base/parts.
#include "host/reports/mass_figures.hpp"

#include <numeric>

#include "host/base/parts.hpp"
#include "host/reports/building.hpp"

namespace flutebook::reports {

std::vector<LostMass> losses_of(const answers::Quote& quote) {
    std::vector<LostMass> result;
    for (const auto& cause : quote.mass.losses) {
        const std::size_t before = result.size();
        for (std::size_t step = 0; step < cause.by_step_kg.size(); ++step)
            if (cause.by_step_kg[step] != 0) result.push_back({cause.title, step, cause.by_step_kg[step]});
        if (result.size() == before) result.push_back({cause.title, std::nullopt, 0});
    }
    return result;
}

Number MassFigures::number(std::int64_t units) const {
    return {base::from_units(units, decimals), decimals};
}

Percentage MassFigures::percentage(std::int64_t units) const {
    return {base::from_units(units, decimals) / 100, decimals};
}

MassFigures mass_figures(const answers::Quote& quote, double scale, int decimals) {
    MassFigures result{decimals, 0, 0, 0, 0, {}, std::vector<std::int64_t>(quote.good.size(), 0)};
    result.issued = base::in_units(quote.mass.issued_kg * scale, decimals);
    result.adhesive = base::in_units(quote.mass.adhesive_kg * scale, decimals);
    std::vector<double> out = {quote.mass.product_kg * scale};
    const std::vector<LostMass> losses = losses_of(quote);
    for (const LostMass& loss : losses) out.push_back(loss.kg * scale);
    const std::vector<std::int64_t> parts = base::parts_of(result.issued + result.adhesive, out, decimals);
    result.product = parts.front();
    result.losses.assign(parts.begin() + 1, parts.end());
    result.lost = std::accumulate(result.losses.begin(), result.losses.end(), std::int64_t{0});
    for (std::size_t i = 0; i < losses.size(); ++i)
        if (losses[i].step) result.by_step[*losses[i].step] += result.losses[i];
    return result;
}

}  // namespace flutebook::reports
