#include "host/services/posting/post_book.hpp"

#include <algorithm>
#include <utility>

#include "host/production/accounts.hpp"
#include "host/services/orders/taken_order.hpp"
#include "ledger/reading/entries.hpp"
#include "ledger/reading/month.hpp"

namespace flutebook::services {

namespace account = production::account;

namespace {

const plant::Paper* find_paper(const plant::Plant& plant, const std::string& code) {
    const auto found = std::find_if(plant.papers.begin(), plant.papers.end(),
                                    [&](const plant::Paper& paper) { return paper.code == code; });
    return found == plant.papers.end() ? nullptr : &*found;
}

}  // namespace

const orders::OrderRecord* PostBook::find_order(const std::string& number) {
    auto known = orders_.find(number);
    if (known == orders_.end()) {
        auto order = taken_order(store_, plant_, number);
        if (!order) return nullptr;
        known = orders_.emplace(number, std::move(*order)).first;
    }
    return &known->second;
}

std::optional<double> PostBook::last_issue_price(const std::string& corrugator, const std::string& paper,
                                                 base::Date day) {
    const auto posted = ledger::last_priced(store_, account::paper_store, corrugator, paper, day);
    const auto beside = foresight_.last_issue(corrugator, paper, day);
    if (beside && (!posted || *beside > posted->date)) {
        const auto* item = find_paper(plant_, paper);
        const auto* price = item == nullptr ? nullptr : item->price_on(*beside);
        return price == nullptr ? std::nullopt : std::optional(price->per_tonne / 1000);
    }
    if (!posted) return std::nullopt;
    return posted->money.to_double() / posted->mass.to_kg();
}

bool PostBook::is_unopened(const std::string& account, const std::string& material, base::Date day) {
    const auto moved = foresight_.first_movement(account);
    const auto counted = foresight_.first_count(account);
    if ((moved && *moved <= day) || (counted && *counted < day)) return false;
    if (ledger::has_moved(store_, account, day, account::opening)) return false;
    const auto counts = ledger::counts_of(store_, account);
    return std::none_of(counts.begin(), counts.end(), [&](const ledger::StandingCount& count) {
        return count.date < day || (count.date == day && count.count.material == material);
    });
}

}  // namespace flutebook::services
