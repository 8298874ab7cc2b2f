#include "host/month/breakdown.hpp"

#include <map>
#include <set>
#include <utility>

#include "host/production/accounts.hpp"
#include "host/production/scrap.hpp"

namespace flutebook::month {

namespace {

struct Sums {
    PartFlows part;
    std::map<std::string, PartCause> causes;
};

bool is_good(const ledger::Share& share, const std::set<std::string>& corrugators) {
    return corrugators.count(share.from) > 0 &&
           (share.to == production::account::floor || share.to == production::account::finished);
}

bool is_kept(const std::string& cause, WeighedCauses weighed) {
    return weighed == WeighedCauses::kept || production::is_of_run(cause);
}

void add(Sums& sums, const ledger::Share& share, const std::set<std::string>& corrugators, WeighedCauses weighed) {
    auto& part = sums.part;
    if (share.from == production::account::paper_store) part.issued += share.mass;
    if (share.from == production::account::floor && share.to != production::account::loose_scrap)
        part.fed += share.mass;
    if (share.to == production::account::finished) part.product += share.mass;
    if (share.from == production::account::finished) part.product += -share.mass;
    if (is_good(share, corrugators)) part.sheets += share.mass;
    if (share.to == production::account::loose_scrap && is_kept(share.cause, weighed))
        sums.causes[share.cause].actual += share.mass;
}

// What only the close moves, and what is no loss's beginning.
bool is_counted(const ledger::Share& share) {
    return share.from != production::account::unexplained && share.to != production::account::unexplained &&
           share.to != production::account::costs && share.from != production::account::opening &&
           share.from != production::account::costs;
}

bool is_empty(const PartFlows& part) {
    const Grams none;
    for (const auto& cause : part.causes)
        if (cause.actual != none || cause.expected != none) return false;
    return part.issued == none && part.sheets == none && part.fed == none && part.product == none;
}

}  // namespace

Grams PartFlows::lost() const {
    Grams sum;
    for (const auto& cause : causes) sum += cause.actual;
    return sum;
}

Grams PartFlows::expected() const {
    Grams sum;
    for (const auto& cause : causes) sum += cause.expected;
    return sum;
}

WeighedCauses weighed_causes(ledger::Axis axis) {
    const bool is_of_runs = axis == ledger::Axis::order || axis == ledger::Axis::board;
    return is_of_runs ? WeighedCauses::left_out : WeighedCauses::kept;
}

std::vector<PartFlows> breakdown(const std::vector<ledger::Share>& shares,
                                 const std::vector<ledger::ExpectedShare>& expected, WeighedCauses weighed) {
    std::set<std::string> corrugators;
    for (const auto& share : shares)
        if (share.from == production::account::adhesive_store || share.from == production::account::paper_store)
            corrugators.insert(share.to);
    std::map<std::string, Sums> sums;
    for (const auto& share : shares)
        if (is_counted(share)) add(sums[share.of], share, corrugators, weighed);
    for (const auto& item : expected)
        if (is_kept(item.cause, weighed)) sums[item.of].causes[item.cause].expected += item.mass;
    std::vector<PartFlows> parts;
    for (auto& [of, sums_of_part] : sums) {
        sums_of_part.part.of = of;
        for (auto& [cause, loss] : sums_of_part.causes) {
            loss.cause = cause;
            sums_of_part.part.causes.push_back(loss);
        }
        if (!is_empty(sums_of_part.part)) parts.push_back(std::move(sums_of_part.part));
    }
    return parts;
}

}  // namespace flutebook::month
