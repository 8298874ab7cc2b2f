// Posting, for all faces: files of production documents in, entries of the ledger out; each row once, all files or
// none. A row that is being posted may ask the ledger and the documents that are posted together with it.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "host/month_answers/ledger_answer.hpp"
#include "host/plant/plant.hpp"
#include "host/production/book.hpp"
#include "host/production/document_format.hpp"
#include "host/production/pending_documents.hpp"
#include "ledger/store/store.hpp"
#include "ledger/values/mass.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::services {

/// Posts every row of every file, in their order, or none: throws InputError (request) with every row that is refused.
/// On disk when it returns. `store` is open for writing, or in memory. Memory does not grow with the rows. Throws
/// LedgerError.
[[nodiscard]] answers::PostAnswer post(const plant::Plant& plant, ledger::Store& store,
                                       const answers::PostOptions& asked);

/// The same to the ledger in a file, which is created where there is none: but not for a dry run, nor for documents
/// that are refused.
[[nodiscard]] answers::PostAnswer post(const plant::Plant& plant, const std::string& ledger,
                                       const answers::PostOptions& asked);

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
