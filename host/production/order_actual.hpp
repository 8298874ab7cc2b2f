// What was made of an order, as its documents tell: every run that stands, on the corrugator and at each step of the
// route. What was reversed, and what reverses it, never was.
//
// Lengths in m but for the roll width, areas in m2.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "host/base/date.hpp"
#include "host/orders/order_record.hpp"
#include "host/production/pieces.hpp"
#include "ledger/values/entry.hpp"

namespace flutebook::production {

/// One row of a corrugator.
struct WebRun {
    std::string corrugator;
    base::Date date;
    double roll_width_mm, outs, metres, order_change_m, good_sheets;
    double web_share = 1;  // of the whole roll, which other orders may have shared: of its hours and its setup
    WebAreas areas{};

    [[nodiscard]] double combined_m2() const { return metres * roll_width_mm / 1000; }
};

/// One row of a converter.
struct PieceRun {
    std::string converter;
    base::Date date;
    Pieces pieces;
    PieceAreas areas;
};

struct OrderActual {
    std::vector<WebRun> web;                   // in order of posting
    std::vector<std::vector<PieceRun>> steps;  // steps 1 .. K of the route

    /// Those of all runs, rising, each once.
    [[nodiscard]] std::vector<base::Date> days() const;
    [[nodiscard]] double good_sheets() const;
    /// Of a step 1 .. K, or with 0 the corrugator: pieces fed, which the corrugator has none of, and pieces that went
    /// on, blanks where they part from the sheet there.
    [[nodiscard]] double fed(std::size_t step) const;
    [[nodiscard]] double went_on(std::size_t step) const;
    /// Boxes that count; of an order without a converter its sheets.
    [[nodiscard]] double boxes() const;
};

/// `entries` are those that name the order; kinds that are no run are passed over. Throws LedgerError: unfit, where a
/// row can no longer be read; refused, where a converter ran that the order does not know.
[[nodiscard]] OrderActual actual_of(const orders::OrderRecord& order, std::span<const ledger::Entry> entries);

/// Why the order cannot be costed as made: what was not posted yet, a sentence each; empty where nothing is missing.
///
/// Something is missing where nothing ran on the corrugator or at a step, where no box was made, and where the steps do
/// not follow from each other:
/// - a step was fed more than the step before it made: then documents of that step are missing. Two in a hundred, and
///   one piece, may be miscounted;
/// - pieces wait before a step while boxes are short of the order: more than a fiftieth of what was made, and more than
///   it takes to set the machine up. Fewer are too few to be run.
/// An order that fell short with nothing left to run was made, and one with boxes enough leaves its rest behind.
[[nodiscard]] std::vector<std::string> what_is_missing(const orders::OrderRecord& order, const OrderActual& actual);

}  // namespace flutebook::production
