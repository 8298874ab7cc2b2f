#include "host/services/posting/posted_rows.hpp"

#include "ledger/reading/entries.hpp"
#include "ledger/reading/month.hpp"

namespace flutebook::services {

namespace {

constexpr std::size_t months_of_causes = 12;
constexpr int sample_of_masses = 100;

}  // namespace

std::set<std::string> LedgerRows::causes() const {
    const auto months = ledger::months(store_);
    std::set<std::string> causes;
    for (std::size_t i = months.size() - std::min(months.size(), months_of_causes); i < months.size(); ++i)
        for (const auto& flow : ledger::flows(store_, months[i]))
            if (!flow.cause.empty()) causes.insert(flow.cause);
    return causes;
}

std::vector<Grams> LedgerRows::latest_masses(const std::string& from) const {
    return ledger::latest_masses(store_, from, sample_of_masses);
}

void LedgerRows::visit_rows(std::chrono::year_month month,
                            const std::function<void(const std::string&, const std::string&)>& visit) const {
    ledger::visit_contents(store_, month, visit);
}

}  // namespace flutebook::services
