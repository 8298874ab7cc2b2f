#include "host/month/breakdown.hpp"

#include <map>
#include <set>
#include <utility>

#include "host/production/accounts.hpp"

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

void add(Sums& sums, const ledger::Share& share, const std::set<std::string>& corrugators) {
    auto& part = sums.part;
    if (share.from == production::account::paper_store) part.issued += share.mass;
    if (share.from == production::account::floor && share.to != production::account::loose_scrap)
        part.fed += share.mass;
    if (share.to == production::account::finished) part.product += share.mass;
    if (share.from == production::account::finished) part.product += -share.mass;
    if (is_good(share, corrugators)) part.sheets += share.mass;
    if (share.to == production::account::loose_scrap) sums.causes[share.cause].actual += share.mass;
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

std::vector<PartFlows> breakdown(const std::vector<ledger::Share>& shares,
                                 const std::vector<ledger::ExpectedShare>& expected) {
    std::set<std::string> corrugators;
    for (const auto& share : shares)
        if (share.from == production::account::adhesive_store || share.from == production::account::paper_store)
            corrugators.insert(share.to);
    std::map<std::string, Sums> sums;
    for (const auto& share : shares)
        if (is_counted(share)) add(sums[share.of], share, corrugators);
    for (const auto& item : expected) sums[item.of].causes[item.cause].expected += item.mass;
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
