// What documents that are posted together tell about each other, in any order.
//
// Two questions cannot be answered row by row: what paper that comes back was issued at, when its issue stands further
// down; and whether a count opens its account, when rows before it stand further down.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>

#include "host/production/book.hpp"
#include "host/production/row.hpp"

namespace flutebook::production {

/// Memory grows with the accounts and days that the rows name, not with the rows. One thread at a time.
class PendingDocuments {
public:
    void note(const DocumentRow& row, Book& book);

    /// The latest day, on or before `day`, on which a paper is issued to a corrugator.
    [[nodiscard]] std::optional<base::Date> last_issue(const std::string& corrugator, const std::string& paper,
                                                       base::Date day) const;
    /// The first day on which anything, be it money alone, moves in or out of an account.
    [[nodiscard]] std::optional<base::Date> first_movement(const std::string& account) const;
    [[nodiscard]] std::optional<base::Date> first_count(const std::string& account) const;

private:
    using Days = std::map<std::string, base::Date>;
    static void keep_earlier(Days& days, const std::string& account, base::Date day);
    [[nodiscard]] static std::optional<base::Date> day_of(const Days& days, const std::string& account);

    std::map<std::pair<std::string, std::string>, std::set<base::Date>> issues_;
    Days first_movements_, first_counts_;
};

}  // namespace flutebook::production
