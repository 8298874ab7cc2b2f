// Rounds by largest remainders: see base/parts.
#include "host/reports/mass_figures.hpp"

#include <fmt/format.h>

#include <numeric>

#include "host/base/parts.hpp"
#include "host/render/number_text.hpp"
#include "host/reports/building.hpp"
#include "host/reports/labels.hpp"

namespace flutebook::reports {

namespace {

// What left: the product first, then each loss; parts of what came in as it is shown.
void share_out(MassFigures& figures, const answers::Quote& quote, double scale) {
    std::vector<double> out = {quote.mass.product_kg * scale};
    const std::vector<LostMass> losses = losses_of(quote);
    for (const LostMass& loss : losses) out.push_back(loss.kg * scale);
    const std::vector<std::int64_t> parts = base::parts_of(figures.issued + figures.adhesive, out, figures.decimals);
    figures.product = parts.front();
    figures.losses.assign(parts.begin() + 1, parts.end());
    figures.lost = std::accumulate(figures.losses.begin(), figures.losses.end(), std::int64_t{0});
    for (std::size_t i = 0; i < losses.size(); ++i)
        if (losses[i].step) figures.by_step[*losses[i].step] += figures.losses[i];
}

MassFigures no_figures(const answers::Quote& quote, int decimals) {
    return {decimals, 0, 0, 0, 0, {}, std::vector<std::int64_t>(quote.good.size(), 0)};
}

}  // namespace

std::vector<LostMass> losses_of(const answers::Quote& quote) {
    std::vector<LostMass> result;
    for (const auto& cause : quote.mass.losses) {
        const std::size_t before = result.size();
        const bool is_of_delivery = quote.is_bought && cause.cause == "corrugator-run";
        const std::string title = is_of_delivery ? arrived_unfit_label : cause.title;
        for (std::size_t step = 0; step < cause.by_step_kg.size(); ++step)
            if (cause.by_step_kg[step] != 0) result.push_back({title, step, cause.by_step_kg[step]});
        // What a web loses, and bought sheets cannot.
        if (result.size() == before && !quote.is_bought) result.push_back({cause.title, std::nullopt, 0});
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
    MassFigures result = no_figures(quote, decimals);
    result.issued = base::in_units(quote.mass.issued_kg * scale, decimals);
    result.adhesive = base::in_units(quote.mass.adhesive_kg * scale, decimals);
    share_out(result, quote, scale);
    return result;
}

MassFigures mass_shares(const answers::Quote& quote) {
    constexpr double whole = 100;
    constexpr int decimals = 2;
    const answers::MassBalance& mass = quote.mass;
    const double scale = whole / (mass.issued_kg + mass.adhesive_kg);
    MassFigures result = no_figures(quote, decimals);
    const auto in =
        base::parts_of(base::in_units(whole, decimals), {mass.issued_kg * scale, mass.adhesive_kg * scale}, decimals);
    result.issued = in[0];
    result.adhesive = in[1];
    share_out(result, quote, scale);
    return result;
}

std::string waste_rate_text(const answers::Quote& quote, const std::string& pieces) {
    return fmt::format("{} of {} (of {} shipped: {})", render::percent_text(quote.mass.loss_share_of_issued(), 2),
                       quote.is_bought ? "the board bought" : "issued paper", pieces,
                       render::percent_text(quote.mass.loss_share_of_product(), 2));
}

}  // namespace flutebook::reports
