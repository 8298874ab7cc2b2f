// The masses of a quote as they stand on the page: rounded once, for every section that shows them, so that both
// sides still come to the same.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/render/report.hpp"

namespace flutebook::reports {

/// One cause at one step; a cause that lost nothing is there once, without a step.
struct LostMass {
    std::string title;
    std::optional<std::size_t> step;
    double kg;
};
[[nodiscard]] std::vector<LostMass> losses_of(const answers::Quote& quote);

/// Whole units of 10^-decimals. `issued + adhesive = lost + product`, and `lost` is the sum of `losses`.
struct MassFigures {
    int decimals;
    std::int64_t issued, adhesive, product, lost;
    std::vector<std::int64_t> losses;   // as losses_of() gives them
    std::vector<std::int64_t> by_step;  // the losses of each step, 0 ... K

    [[nodiscard]] render::Number number(std::int64_t units) const;
    /// Where the masses were taken in per cent.
    [[nodiscard]] render::Percentage percentage(std::int64_t units) const;
};

/// The masses in kg times `scale`.
[[nodiscard]] MassFigures mass_figures(const answers::Quote& quote, double scale, int decimals);
/// In hundredths of a per cent of all that came in, paper and adhesive: each side comes to 100.00 %.
[[nodiscard]] MassFigures mass_shares(const answers::Quote& quote);
/// The rate of waste by the base that plants compare, the paper issued, with the other base beside it.
[[nodiscard]] std::string waste_rate_text(const answers::Quote& quote, const std::string& pieces);

}  // namespace flutebook::reports
