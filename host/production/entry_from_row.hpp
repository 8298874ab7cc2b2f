// From a row of a document to an entry: what moved, and what was expected of it, each kind of document in a source of
// its own.
//
// Worked out once, when the row is posted, by the order's own layout and allowances; the ledger keeps it unchanged.
// Kilograms that were weighed or worked out become the whole grams that the ledger keeps.
#pragma once

#include <vector>

#include "host/plant/plant.hpp"
#include "host/production/book.hpp"
#include "host/production/row.hpp"
#include "host/production/row_validation.hpp"
#include "ledger/values/mass.hpp"

namespace flutebook::production {

/// Of a row of any kind: an entry to post, or every reason why it cannot be.
[[nodiscard]] RowResult entry_from_row(const DocumentRow& row, const plant::Plant& plant, Book& book);

/// The nearest gram, halves away from zero. The mass is below `most_kg`.
[[nodiscard]] Grams to_grams(double kg);
/// Nothing that one row moves is as heavy.
inline constexpr double most_kg = 1e9;

/// Parts of a whole in whole grams that add up to it: each rounded, and the largest takes the difference.
[[nodiscard]] std::vector<Grams> parts_of(Grams whole, const std::vector<double>& parts_kg);

[[nodiscard]] RowResult paper_issue(RowValidation& validation);
[[nodiscard]] RowResult corrugator_run(RowValidation& validation);
[[nodiscard]] RowResult converter_run(RowValidation& validation);
[[nodiscard]] RowResult weighed_scrap(RowValidation& validation);
[[nodiscard]] RowResult bale(RowValidation& validation);
[[nodiscard]] RowResult ticket(RowValidation& validation);
[[nodiscard]] RowResult centre_cost(RowValidation& validation);
[[nodiscard]] RowResult count(RowValidation& validation);

/// Adds what moved, and what was expected, unless it is nothing.
void add(ledger::Draft& draft, const ledger::Movement& movement);
void add(ledger::Draft& draft, const ledger::Expected& expected);

}  // namespace flutebook::production
