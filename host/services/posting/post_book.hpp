// What a row that is being posted may ask: the ledger, and the documents posted together with it.
#pragma once

#include <map>
#include <optional>
#include <string>

#include "host/plant/plant.hpp"
#include "host/production/book.hpp"
#include "host/production/pending_documents.hpp"
#include "ledger/store/store.hpp"

namespace flutebook::services {

/// Refers to a plant and a store that outlive it. One thread at a time.
class PostBook : public production::Book {
public:
    PostBook(const plant::Plant& plant, const ledger::Store& store) : plant_(plant), store_(store) {}

    /// Looks ahead: called with every row before any of them is asked about.
    void foresee(const production::DocumentRow& row) { foresight_.note(row, *this); }

    [[nodiscard]] const orders::OrderRecord* find_order(const std::string& number) override;
    [[nodiscard]] std::optional<double> last_issue_price(const std::string& corrugator, const std::string& paper,
                                                         base::Date day) override;
    [[nodiscard]] bool is_unopened(const std::string& account, const std::string& material, base::Date day) override;

private:
    const plant::Plant& plant_;
    const ledger::Store& store_;
    production::PendingDocuments foresight_;
    std::map<std::string, orders::OrderRecord> orders_;  // those that were asked for
};

}  // namespace flutebook::services
