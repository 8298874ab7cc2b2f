// Checks one row against the plant and the book: looks up its words, and collects all errors. Rows that cannot be
// posted are gathered over all files, so that a person mends everything at once.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "host/plant/plant.hpp"
#include "host/production/book.hpp"
#include "host/production/row.hpp"
#include "ledger/values/entry.hpp"

namespace flutebook::production {

/// What a row comes to: an entry of the ledger, or why not.
using RowResult = std::variant<ledger::Draft, RowErrors>;

/// Refers to a row, a plant and a book that outlive it. What is looked up and not found is objected to, and null.
class RowValidation {
public:
    RowValidation(const DocumentRow& row, const plant::Plant& plant, Book& book)
        : row_(row), plant_(plant), book_(book) {}

    [[nodiscard]] const DocumentRow& row() const { return row_; }
    [[nodiscard]] const plant::Plant& plant() const { return plant_; }
    [[nodiscard]] Book& book() const { return book_; }

    void object(DocumentColumn column, const std::string& text) { objections_.push_back({name_of(column), text}); }
    /// `found …; expected …` with the field's own text.
    void expect(DocumentColumn column, const std::string& expected);
    /// The name in a column is none of `known`; `what` is one of them.
    void object_to_name(DocumentColumn column, const std::string& what, const std::vector<std::string>& known);

    [[nodiscard]] bool passed() const { return objections_.empty(); }
    [[nodiscard]] RowErrors objections() const { return objections_; }

    /// The shift that was named is one of the plant's, or it is objected to.
    void check_shift();
    [[nodiscard]] const orders::OrderRecord* order();
    [[nodiscard]] const plant::Corrugator* corrugator();
    [[nodiscard]] const plant::Converter* converter();
    [[nodiscard]] const plant::Paper* paper(DocumentColumn column);
    [[nodiscard]] const plant::Mill* mill();
    /// An EN 643 grade, or it is objected to.
    void check_grade();

    [[nodiscard]] bool is_corrugator(const std::string& code) const;
    [[nodiscard]] bool is_machine(const std::string& code) const;
    [[nodiscard]] std::vector<std::string> machines() const;

    /// A mass that a row can move, or it is objected to.
    [[nodiscard]] bool is_light_enough(DocumentColumn column, double kg);
    /// quantity x rate, or nothing and an objection where it is too much to keep.
    [[nodiscard]] Money amount(DocumentColumn column, double quantity, double rate);

    /// An entry with what stands in every row: kind, ref, content, day, shift and note.
    [[nodiscard]] ledger::Draft draft() const;

private:
    const DocumentRow& row_;
    const plant::Plant& plant_;
    Book& book_;
    RowErrors objections_;
};

/// `file:line: column: text`; a line 0 and an empty column are left out.
[[nodiscard]] std::string at_row(const std::string& file, std::int64_t line, std::string_view column,
                                 const std::string& text);

/// Memory is bounded: beyond `most_listed` lines they are counted. One thread at a time.
class Refusals {
public:
    static constexpr std::size_t most_listed = 1000;

    /// As at_row() says it.
    void add(const std::string& file, std::int64_t line, std::string_view column, const std::string& text);

    [[nodiscard]] bool any() const { return count_ > 0; }

    /// Throws InputError (request) with every sentence, in their order, if there is any.
    void throw_if_any() const;

private:
    std::vector<std::string> listed_;
    std::size_t count_ = 0;
};

}  // namespace flutebook::production
