// Several quantities may fall below several limits: the name must stand at each of them, and the lowest is kept.
#include "host/quoting/approval.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/base/quoted_text.hpp"

namespace flutebook::quoting {

namespace {

// A quantity whose profit is below a limit.
struct PoorQuantity {
    double quantity, profit_share;
    const plant::ApprovalLimit* limit;
};

std::vector<PoorQuantity> poor_quantities(const plant::Plant& plant, const answers::RequestAnswer& answer) {
    std::vector<PoorQuantity> result;
    for (const auto& item : answer.quantities) {
        if (!item.is_makeable()) continue;
        const double share = item.quote ? item.quote->sale.profit_share : item.set->sale.profit_share;
        if (const auto* limit = plant.pricing.find_approval(share)) result.push_back({item.quantity(), share, limit});
    }
    return result;
}

std::string shortfall(const PoorQuantity& item) {
    return fmt::format("the profit at {:.0f} is below {:g} % of the order value: found {:.4g} %", item.quantity,
                       item.limit->profit_share * 100, item.profit_share * 100);
}

std::string names_of(const plant::ApprovalLimit& limit) {
    std::vector<std::string> names;
    for (const std::string& name : limit.names) names.push_back(base::shown(name));
    return fmt::format("{}", fmt::join(names, ", "));
}

}  // namespace

std::vector<base::Warning> approval_warnings(const plant::Plant& plant, const answers::RequestAnswer& answer) {
    std::vector<base::Warning> result;
    for (const PoorQuantity& item : poor_quantities(plant, answer))
        result.push_back(
            {base::place_text(item.limit->place),
             fmt::format("{}; it is saved only with the approval of {}", shortfall(item), names_of(*item.limit))});
    return result;
}

ApprovalVerdict approve(const plant::Plant& plant, const answers::RequestAnswer& answer,
                        const std::optional<std::string>& name) {
    ApprovalVerdict result;
    for (const PoorQuantity& item : poor_quantities(plant, answer)) {
        const std::vector<std::string>& names = item.limit->names;
        if (name && std::find(names.begin(), names.end(), *name) != names.end()) {
            if (!result.approval || item.limit->profit_share < result.approval->below)
                result.approval =
                    answers::Approval{*name, item.limit->profit_share, base::place_text(item.limit->place)};
            continue;
        }
        result.refusals.push_back(
            fmt::format("{}: request {}: {}{}; not saved: name who approves of it, --approve NAME with one of {}",
                        base::place_text(answer.request.place), answer.request.number, shortfall(item),
                        name ? ", and " + base::shown(*name) + " may not approve of it" : "", names_of(*item.limit)));
    }
    return result;
}

}  // namespace flutebook::quoting
