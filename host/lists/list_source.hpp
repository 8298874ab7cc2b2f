// Where the rows of a list come from, whatever kind of file it is: a header and rows of texts, each with its place.
#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "host/base/place.hpp"

namespace flutebook::lists {

struct ListCell {
    std::string text;  // without spaces around it; empty where nothing stands there
    base::Place place;
};

struct ListRow {
    base::Place place;
    std::vector<ListCell> cells;
    /// Why it is refused as a whole: a finished sentence. What of its cells could be read is there.
    std::optional<std::string> fault;
};

/// How numbers stand in a list. Between semicolons the decimal mark may be a comma.
enum class ListNumbers { point_alone, comma_too };

/// Rows in the order of the file, the header first; lines that hold nothing are left out. One thread at a time.
class ListSource {
public:
    ListSource() = default;
    ListSource(const ListSource&) = delete;
    ListSource& operator=(const ListSource&) = delete;
    virtual ~ListSource() = default;

    [[nodiscard]] virtual std::optional<ListRow> next() = 0;
    /// Known once the header was read.
    [[nodiscard]] virtual ListNumbers numbers() const = 0;
    /// How much of the file was read, from 0 to 1.
    [[nodiscard]] virtual double share_read() const = 0;
};

/// A list in CSV. Throws InputError (request) where it cannot be read at all.
[[nodiscard]] std::unique_ptr<ListSource> open_csv_list(const std::string& file);

/// The same of the first sheet of a workbook (.xlsx): shared and inline texts, numbers, days by the style of their
/// cell, the kept results of formulas. A cell's place is its name: "list.xlsx:B7". Anything else refuses its row, with
/// the cell. Refused as a whole, at once or in next(): what is no workbook, is encrypted, broken off, has macros,
/// declares a document type, or unpacks to more than a list may hold.
[[nodiscard]] std::unique_ptr<ListSource> open_workbook_list(const std::string& file);

}  // namespace flutebook::lists
