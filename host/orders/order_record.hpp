// What the ledger measures an order's production against: the layout and the allowances of the quote it was taken
// from, fixed on the day it was taken. Later changes of the plant's files touch none of it.
//
// Lengths in mm, areas in m2, grammage in g/m2, as in the quote.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "host/plant/plant.hpp"

namespace flutebook::orders {

struct PlyRecord {
    std::string paper;
    double grammage_gsm, take_up, adhesive_gsm;
};

/// What a corrugator is allowed to lose.
struct CorrugatorAllowance {
    std::string code;
    double run_waste, roll_loss, order_change_m;
};

/// What a converter is allowed to lose.
struct ConverterAllowance {
    std::string code;
    plant::Converter::Kind kind;
    double run_waste, setup_sheets;
};

/// How the sheets of an order lie on the web, and the boxes on a sheet. In this a layout's candidate, a quote and an
/// order's record are the same.
struct SheetCut {
    double roll_width_mm, outs;  // sheets side by side
    double ups;                  // boxes on a sheet
    double chop_mm, slit_mm;     // the sheet, along the web and across it
};

struct OrderRecord : SheetCut {
    std::string number;  // the plant's own; of a piece of a set "N/body"
    std::string quote;   // Q000001
    double quantity;
    std::string customer, board, style;
    std::vector<PlyRecord> plies;  // outside first
    double grammage_gsm;           // of the combined board
    double adhesive_gsm;           // dry, of all plies
    double adhesive_rate;          // money per dry kg, of the quote's material lines on it
    // The order's own layout.
    std::string corrugator;
    double sheet_area_m2, box_area_m2;
    std::vector<std::string> route;  // converters' codes, step 1 .. K
    std::size_t parting;             // the step where boxes part from the sheet
    /// Of the quote's own machines as the quote had them, replaced or not; of every other machine of the plant its own.
    std::vector<CorrugatorAllowance> corrugators;
    std::vector<ConverterAllowance> converters;
    /// The model whose losses the quote has, where they are not those of the formulas of a run, by which the month and
    /// the order's cost expect; else empty, as in every record of an earlier release.
    std::string lost_otherwise_by = {};
    /// Of a set: the name of this piece, and how many sets; the record is of one piece of them, and its quantity counts
    /// pieces. Empty and 0 of a box of one piece.
    std::string piece = {};
    double sets = 0;
    /// Where it was quoted with a share of its web: that share, and the order changes that it pays. 0 in a record of an
    /// order that pays its own roll, see paid_share() and paid_changes().
    double web_share = 0;
    double changes = 0;
    /// Who delivers its board as sheets, in the place of a corrugator; empty where the board is made here. The ledger
    /// keeps no sheets that are bought, so no production can be posted to such an order.
    std::string bought_from = {};

    /// "N" of the piece "N/body" of a set.
    [[nodiscard]] std::string set_number() const;
    /// The part of its web that the order pays, 1 of its own roll alone; and the order changes, 1 of its own.
    [[nodiscard]] double paid_share() const { return web_share > 0 ? web_share : 1; }
    [[nodiscard]] double paid_changes() const { return web_share > 0 ? changes : 1; }
    [[nodiscard]] std::size_t last_step() const { return route.size(); }
    [[nodiscard]] const CorrugatorAllowance* find_corrugator(const std::string& code) const;
    [[nodiscard]] const ConverterAllowance* find_converter(const std::string& code) const;
    /// The step that a machine stands for: the one that names it, else the first of its kind; nothing where the route
    /// has no machine of its kind.
    [[nodiscard]] std::optional<std::size_t> step_of(const std::string& converter) const;
};

}  // namespace flutebook::orders
