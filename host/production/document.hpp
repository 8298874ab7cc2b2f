// A file of production documents, opened: its header row known, its rows read one by one.
#pragma once

#include <cstddef>
#include <string>
#include <variant>

#include "host/base/csv.hpp"
#include "host/production/document_format.hpp"
#include "host/production/row.hpp"

namespace flutebook::production {

/// What one line of a file came to.
struct ReadLine {
    std::int64_t number;
    std::variant<DocumentRow, RowErrors> outcome;
};

/// One thread at a time. Memory does not grow with the file.
class Document {
public:
    /// The document in a file, or why it is none, with the line.
    struct UnreadableDocument {
        std::int64_t line;  // 0: the file as a whole
        std::string why;
    };
    [[nodiscard]] static std::variant<Document, UnreadableDocument> open(const std::string& file);

    [[nodiscard]] Kind kind() const { return form_->kind; }

    /// The next row, or what is wrong with it; nothing at the end.
    [[nodiscard]] std::optional<ReadLine> next();

private:
    Document(base::CsvReader csv, const DocumentFormat& form, std::size_t fields)
        : csv_(std::move(csv)), form_(&form), rows_(form, fields, csv_.separator()) {}

    base::CsvReader csv_;
    const DocumentFormat* form_;
    RowReader rows_;
};

}  // namespace flutebook::production
