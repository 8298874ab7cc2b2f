// What the check of a row needs to know of other rows: those in the ledger, and those that are posted together with it.
#pragma once

#include <optional>
#include <string>

#include "host/base/date.hpp"
#include "host/orders/order_record.hpp"

namespace flutebook::production {

/// One thread at a time.
class Book {
public:
    Book() = default;
    Book(const Book&) = delete;
    Book& operator=(const Book&) = delete;
    virtual ~Book() = default;

    /// An order that was taken, knowing every machine that the plant has now; null where there is none. Lives as long
    /// as the book.
    [[nodiscard]] virtual const orders::OrderRecord* find_order(const std::string& number) = 0;

    /// What a kg of the paper cost when it was last issued to the corrugator, on that day or before; nothing where it
    /// never was.
    [[nodiscard]] virtual std::optional<double> last_issue_price(const std::string& corrugator,
                                                                 const std::string& paper, base::Date day) = 0;

    /// Whether a count at the end of that day opens the account: no row moved anything in or out of it on that day or
    /// before, and it was not counted before. Counts of other materials on the same day open it together.
    [[nodiscard]] virtual bool is_unopened(const std::string& account, const std::string& material, base::Date day) = 0;
};

}  // namespace flutebook::production
