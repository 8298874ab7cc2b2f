// What a ledger tells of rows that were posted before, for judging new ones.
#pragma once

#include "host/production/plausibility.hpp"
#include "ledger/store/store.hpp"

namespace flutebook::services {

/// Refers to a store that outlives it. One thread at a time.
class LedgerRows : public production::PostedRows {
public:
    explicit LedgerRows(const ledger::Store& store) : store_(store) {}

    [[nodiscard]] std::set<std::string> causes() const override;
    [[nodiscard]] std::vector<Grams> latest_masses(const std::string& from) const override;
    void visit_rows(std::chrono::year_month month,
                    const std::function<void(const std::string&, const std::string&)>& visit) const override;

private:
    const ledger::Store& store_;
};

}  // namespace flutebook::services
