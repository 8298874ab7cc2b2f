#include "host/reports/refused_section.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/render/number_text.hpp"
#include "host/render/text.hpp"

namespace flutebook::reports {

namespace {

using geometry::Refused;

constexpr std::size_t most_named = 12;

// Quantities with one list of limits.
struct StoppedQuantities {
    std::vector<double> quantities;
    const std::vector<Refused>* ways;
};

bool are_same(const std::vector<Refused>& left, const std::vector<Refused>& right) {
    return std::equal(left.begin(), left.end(), right.begin(), right.end(), [](const Refused& a, const Refused& b) {
        return a.candidate == b.candidate && a.limit == b.limit;
    });
}

std::vector<StoppedQuantities> stopped(const services::RequestAnswer& answer) {
    std::vector<StoppedQuantities> result;
    for (const auto& item : answer.quantities) {
        if (!item.unmakeable) continue;
        const auto same = std::find_if(result.begin(), result.end(), [&](const StoppedQuantities& before) {
            return are_same(*before.ways, item.unmakeable->refused);
        });
        if (same == result.end())
            result.push_back({{item.unmakeable->quantity}, &item.unmakeable->refused});
        else
            same->quantities.push_back(item.unmakeable->quantity);
    }
    return result;
}

struct Limit {
    std::string text;
    std::vector<std::string> ways;
};

std::vector<Limit> by_limit(const std::vector<Refused>& ways) {
    std::vector<Limit> result;
    for (const Refused& refused : ways) {
        auto item =
            std::find_if(result.begin(), result.end(), [&](const Limit& limit) { return limit.text == refused.limit; });
        if (item == result.end()) item = result.insert(item, {refused.limit, {}});
        item->ways.push_back(refused.candidate);
    }
    return result;
}

// "500, 1 000 and 5 000"
std::string listed(const std::vector<double>& quantities) {
    std::string result;
    for (std::size_t i = 0; i < quantities.size(); ++i) {
        if (i != 0) result += i + 1 == quantities.size() ? " and " : ", ";
        result += render::number_text(quantities[i], 0);
    }
    return result;
}

std::string limit_text(const Limit& limit) {
    const std::size_t named = std::min(limit.ways.size(), most_named);
    std::string ways;
    for (std::size_t i = 0; i < named; ++i) ways += (i == 0 ? "" : "; ") + limit.ways[i];
    if (named < limit.ways.size())
        ways += fmt::format("; and {} more", render::number_text(static_cast<double>(limit.ways.size() - named), 0));
    return render::hanging("  ", render::cleaned(limit.text)) + render::hanging("      stops ", render::cleaned(ways));
}

}  // namespace

std::string refused_section(const SheetContext& enquiry, const services::RequestAnswer& answer) {
    std::string result;
    for (const StoppedQuantities& stopped_quantities : stopped(answer)) {
        const std::string title = stopped_quantities.quantities.size() == 1
                                      ? enquiry.order_text(stopped_quantities.quantities[0])
                                      : listed(stopped_quantities.quantities) + " " + enquiry.pieces();
        result += '\n';
        result += render::rule('-');
        result += render::hanging("", title + ": nothing here can make them, and this is what stops each way");
        result += render::rule('-');
        for (const Limit& limit : by_limit(*stopped_quantities.ways)) result += limit_text(limit);
    }
    return result;
}

}  // namespace flutebook::reports
