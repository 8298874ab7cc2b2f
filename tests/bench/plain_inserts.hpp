// The yardstick of posting: the rows of a ledger as plain inserts into one bare table.
#pragma once

#include <cstddef>
#include <string>
#include <variant>
#include <vector>

namespace flutebook::bench {

/// Every value that a ledger stores of its documents, row by row, as it stands in its file.
class PlainRows {
public:
    /// Reads a ledger's entries, movements, expected losses and counts.
    explicit PlainRows(const std::string& ledger_file);

    [[nodiscard]] std::size_t count() const { return rows_.size(); }

    /// Inserts all of them into a new file, in one transaction, as safely flushed as a ledger: no key, no index, no
    /// check, no trigger.
    void insert_into(const std::string& file) const;

private:
    using Value = std::variant<std::monostate, std::int64_t, std::string>;
    std::vector<std::vector<Value>> rows_;
};

/// Runs a query on a file, reads every row of its answer, and says how many there were.
std::size_t read_rows(const std::string& file, const std::string& sql);

}  // namespace flutebook::bench
