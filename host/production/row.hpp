// A file of production documents, opened, and its rows as its own columns mean them: days, numbers and words, before
// they are checked against the plant.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "host/base/csv.hpp"
#include "host/base/date.hpp"
#include "host/production/document_format.hpp"

namespace flutebook::production {

/// Why a row cannot be posted: the column, and `found …; expected …`.
struct RowError {
    std::string column;  // empty: the row as a whole
    std::string text;
};
using RowErrors = std::vector<RowError>;

struct DocumentRow {
    Kind kind;
    std::int64_t line;
    base::Date date;
    /// The row in its one canonical form: a line `column=value` for each field that holds anything, numbers as
    /// canonical() writes them. Two rows that say the same have the same content.
    std::string content;

    /// Empty where nothing was written, or the form has no such column.
    [[nodiscard]] const std::string& text(DocumentColumn column) const { return at(column).text; }
    [[nodiscard]] std::optional<double> number(DocumentColumn column) const { return at(column).number; }
    /// Of a column that is always given.
    [[nodiscard]] double value(DocumentColumn column) const { return at(column).number.value(); }

private:
    friend class RowReader;
    struct FieldText {
        std::string text;  // as written
        std::optional<double> number;
    };
    [[nodiscard]] const FieldText& at(DocumentColumn column) const { return fields_[static_cast<std::size_t>(column)]; }

    std::array<FieldText, column_count> fields_;
};

/// Reads the rows of one file, which writes all of its decimals with the same mark. One thread at a time.
class RowReader {
public:
    /// `form` must outlive it; `fields` is how many its header row has. A decimal comma is only read where it cannot be
    /// taken for a separator.
    RowReader(const DocumentFormat& form, std::size_t fields, char separator)
        : form_(form), fields_(fields), separator_(separator) {}

    /// The row of a line without fault, or all that is wrong with its fields.
    [[nodiscard]] std::variant<DocumentRow, RowErrors> read(const base::CsvLine& line);

    /// The row that was posted with this content; nothing where no row of the form has it. Its line is 0.
    [[nodiscard]] static std::optional<DocumentRow> read_posted(const DocumentFormat& form, const std::string& content);

private:
    [[nodiscard]] std::optional<std::string> read_field(const ColumnRule& rule, std::string_view field,
                                                        DocumentRow& row);
    [[nodiscard]] std::optional<std::string> read_number(const ColumnRule& rule, std::string_view field,
                                                         DocumentRow& row);
    [[nodiscard]] static bool take_posted(const ColumnRule& rule, std::string_view value, DocumentRow& row);

    const DocumentFormat& form_;
    std::size_t fields_;
    char separator_;
    char mark_ = '\0';            // of the first decimal that had one
    std::int64_t mark_line_ = 0;  // where that was
};

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
