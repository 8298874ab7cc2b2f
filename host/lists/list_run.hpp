// A list worked through from its first row to its last: rows are read a window at a time, answered on all threads, and
// handed over in their order. What is in memory does not grow with the list.
#pragma once

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "host/lists/list_columns.hpp"
#include "host/lists/list_costing.hpp"
#include "host/lists/list_source.hpp"
#include "host/workplace/workplace.hpp"

namespace flutebook::lists {

struct AnsweredRow {
    ListRow row;
    CostedItem item;
    std::optional<OldPrice> old;
    std::optional<answers::PriceParts> then;  // what the plant reckons for the day of the old price
};

struct ListOptions {
    unsigned threads = 1;            // changes the time, not the answer
    std::optional<base::Date> date;  // prices of this day, not of the rows' dates
    base::Date usual_day;            // of a row that gives no date
};

/// One thread at a time.
class ListRun {
public:
    /// Reads the header. `workplace` and `source` must outlive the run. Throws InputError (request).
    ListRun(const workplace::Workplace& workplace, ListSource& source, const ListOptions& options);

    [[nodiscard]] const ListColumns& columns() const { return columns_; }

    /// The next rows; none at the end. They live until the next are asked for.
    [[nodiscard]] std::span<const AnsweredRow> next();

private:
    void answer();

    const workplace::Workplace& workplace_;
    ListSource& source_;
    ListOptions options_;
    ListColumns columns_;
    std::size_t threads_;
    std::vector<AnsweredRow> rows_;  // their memory is kept from window to window
};

}  // namespace flutebook::lists
