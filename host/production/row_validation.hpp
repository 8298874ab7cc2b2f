// One row held against the plant and the book: what its words name, and all that speaks against posting it.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "host/plant/plant.hpp"
#include "host/production/book.hpp"
#include "host/production/row.hpp"
#include "ledger/values/entry.hpp"

namespace flutebook::production {

/// What a row comes to: an entry of the ledger, or why not.
using Worth = std::variant<ledger::Draft, Objections>;

/// Refers to a row, a plant and a book that outlive it. What is looked up and not found is objected to, and null.
class Examination {
public:
    Examination(const Row& row, const plant::Plant& plant, Book& book) : row_(row), plant_(plant), book_(book) {}

    [[nodiscard]] const Row& row() const { return row_; }
    [[nodiscard]] const plant::Plant& plant() const { return plant_; }
    [[nodiscard]] Book& book() const { return book_; }

    void object(Column column, const std::string& text) { objections_.push_back({name_of(column), text}); }
    /// `found …; expected …` with the field's own text.
    void expect(Column column, const std::string& expected);
    /// The name in a column is none of `known`; `what` is one of them.
    void object_to_name(Column column, const std::string& what, const std::vector<std::string>& known);

    [[nodiscard]] bool passed() const { return objections_.empty(); }
    [[nodiscard]] Objections objections() const { return objections_; }

    /// The shift that was named is one of the plant's, or it is objected to.
    void check_shift();
    [[nodiscard]] const orders::OrderRecord* order();
    [[nodiscard]] const plant::Corrugator* corrugator();
    [[nodiscard]] const plant::Converter* converter();
    [[nodiscard]] const plant::Paper* paper(Column column);
    [[nodiscard]] const plant::Mill* mill();
    /// An EN 643 grade, or it is objected to.
    void check_grade();

    [[nodiscard]] bool is_corrugator(const std::string& code) const;
    [[nodiscard]] bool is_machine(const std::string& code) const;
    [[nodiscard]] std::vector<std::string> machines() const;

    /// A mass that a row can move, or it is objected to.
    [[nodiscard]] bool is_light_enough(Column column, double kg);
    /// quantity x rate, or nothing and an objection where it is too much to keep.
    [[nodiscard]] Money amount(Column column, double quantity, double rate);

    /// An entry with what stands in every row: kind, ref, content, day, shift and note.
    [[nodiscard]] ledger::Draft draft() const;

private:
    const Row& row_;
    const plant::Plant& plant_;
    Book& book_;
    Objections objections_;
};

}  // namespace flutebook::production
