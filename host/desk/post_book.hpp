// What a row that is being posted may ask: the ledger, and the documents posted together with it.
#pragma once

#include <map>
#include <optional>
#include <string>

#include "host/catalogue/plant.hpp"
#include "host/review/documents/book.hpp"
#include "host/review/documents/foresight.hpp"
#include "ledger/store.hpp"

namespace flutebook::desk {

/// Refers to a plant and a store that outlive it. One thread at a time.
class PostBook : public review::Book {
public:
    PostBook(const catalogue::Plant& plant, const ledger::Store& store) : plant_(plant), store_(store) {}

    /// Looks ahead: called with every row before any of them is asked about.
    void foresee(const review::Row& row) { foresight_.note(row, *this); }

    [[nodiscard]] const review::OrderRecord* find_order(const std::string& number) override;
    [[nodiscard]] std::optional<double> last_issue_price(const std::string& corrugator, const std::string& paper,
                                                         catalogue::Date day) override;
    [[nodiscard]] bool is_unopened(const std::string& account, const std::string& material,
                                   catalogue::Date day) override;

private:
    const catalogue::Plant& plant_;
    const ledger::Store& store_;
    review::Foresight foresight_;
    std::map<std::string, review::OrderRecord> orders_;  // those that were asked for
};

}  // namespace flutebook::desk
