// What was answered for each quantity, then and today, figure by figure and line by line. Both answers come as the
// JSON that was kept: what is told here is what a script would find.
#pragma once

#include <cstddef>
#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <vector>

#include "host/services/quoting/differences.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::services {

/// What a quantity came to; nothing where nothing could make it.
struct Total {
    Money cost, cost_per_thousand, price_per_thousand;
};

/// A cost line at one step or ply that does not amount to what it did.
struct ChangedLine {
    struct Figures {
        std::string machine;  // or "dispatch"
        double quantity, rate;
        std::string unit;
        Money amount;
    };
    std::string plugin, line;
    std::size_t step;                 // today's, or where it stood
    std::optional<std::size_t> ply;   // outside first
    std::optional<Figures> was, now;  // `was` alone: charged no more; `now` alone: charged today

    [[nodiscard]] Money by() const;
};

struct ChangedQuantity {
    double quantity;
    std::optional<Total> was, now;
    std::vector<Difference> figures;  // but lines, totals among them, by their keys in the JSON
    std::vector<ChangedLine> lines;   // in today's order, then those that are gone
    std::vector<std::string> limits;  // of what was made then and cannot be made today: "WAY: LIMIT"

    [[nodiscard]] bool differs() const {
        return was.has_value() != now.has_value() || !figures.empty() || !lines.empty();
    }
};

/// Two R of `quote --json` for the same request, every quantity of it in the same order. `now` may be null: today
/// nothing is answered. What --explain adds is a view of the same figures, and left out. Throws the JSON library's
/// exception where `was` or `now` is no R.
[[nodiscard]] std::vector<ChangedQuantity> changed_quantities(const nlohmann::ordered_json& was,
                                                              const nlohmann::ordered_json& now);

/// What the quantities of an R came to.
[[nodiscard]] std::vector<std::optional<Total>> totals_of(const nlohmann::ordered_json& answer);

}  // namespace flutebook::services
