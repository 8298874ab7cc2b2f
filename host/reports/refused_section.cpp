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
    std::vector<StoppedQuantities> made;
    for (const auto& own : answer.quantities) {
        if (!own.unmakeable) continue;
        const auto same = std::find_if(made.begin(), made.end(), [&](const StoppedQuantities& before) {
            return are_same(*before.ways, own.unmakeable->refused);
        });
        if (same == made.end())
            made.push_back({{own.unmakeable->quantity}, &own.unmakeable->refused});
        else
            same->quantities.push_back(own.unmakeable->quantity);
    }
    return made;
}

struct Limit {
    std::string text;
    std::vector<std::string> ways;
};

std::vector<Limit> by_limit(const std::vector<Refused>& ways) {
    std::vector<Limit> made;
    for (const Refused& refused : ways) {
        auto own =
            std::find_if(made.begin(), made.end(), [&](const Limit& limit) { return limit.text == refused.limit; });
        if (own == made.end()) own = made.insert(own, {refused.limit, {}});
        own->ways.push_back(refused.candidate);
    }
    return made;
}

// "500, 1 000 and 5 000"
std::string listed(const std::vector<double>& quantities) {
    std::string made;
    for (std::size_t i = 0; i < quantities.size(); ++i) {
        if (i != 0) made += i + 1 == quantities.size() ? " and " : ", ";
        made += render::number_text(quantities[i], 0);
    }
    return made;
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
    std::string made;
    for (const StoppedQuantities& own : stopped(answer)) {
        const std::string title = own.quantities.size() == 1 ? enquiry.order_text(own.quantities[0])
                                                             : listed(own.quantities) + " " + enquiry.pieces();
        made += '\n';
        made += render::rule('-');
        made += render::hanging("", title + ": nothing here can make them, and this is what stops each way");
        made += render::rule('-');
        for (const Limit& limit : by_limit(*own.ways)) made += limit_text(limit);
    }
    return made;
}

}  // namespace flutebook::reports
