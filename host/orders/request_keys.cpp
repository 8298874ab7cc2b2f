#include "host/orders/request_keys.hpp"

namespace flutebook::orders {

const std::vector<RequestKey>& request_keys() {
    using Given = RequestKey::Given;
    static const std::vector<RequestKey> keys = {
        {"request", Given::always, "its number, freely chosen; no two requests share one", "", "R-1001"},
        {"customer", Given::at_will, "who asks", "", "Ashlar Tiles"},
        {"date", Given::always, "the day whose prices count", "", "2026-10-15"},
        {"style", Given::always, "a code that `flutebook style list` shows, or `outline`", "", "\"0201\""},
        {"inside", Given::at_will,
         "inner size of the box, open side up; length is the longer side, else a warning shows both prices", "mm",
         "{length: 400, width: 300, height: 250}"},
        {"outside", Given::at_will, "outer size, instead of `inside`; what the folded walls take is subtracted", "mm",
         "{length: 408, width: 308, height: 262}"},
        {"measures", Given::at_will, "lengths that the style asks for; if left out, the usual value counts", "mm",
         "{overlap: 60}"},
        {"flutes", Given::at_will, "`along L` or `along B`, where the style may be turned", "", "along B"},
        {"outline", Given::at_will, "the blank of the customer's drawing, for the style `outline`", "mm, m2",
         "{length: 620, width: 480, area: 0.21}"},
        {"board", Given::always, "a code of boards.yaml", "", "B-140"},
        {"quantities", Given::always, "boxes, sheets or sets, each quantity once", "", "[500, 1000, 5000]"},
        {"margin", Given::always,
         "the profit as a share of the price: 0.18 or 18%; may be left out where the plant has one", "", "0.18"},
        {"colours", Given::at_will, "how many colours are printed; if left out, none", "", "2"},
        {"trim", Given::at_will,
         "how it pays for side trim: `alone`, the trim of its own roll; `share`, the average of runs in the ledger; or "
         "that share of the board as numbers, with the order changes of an order; if left out, as the plant says",
         "", "{share: 0.03, changes: 0.6}"},
        {"route", Given::at_will,
         "the machines after the corrugator, in order; if left out, the cheapest route; of a set also by piece", "",
         "[PR1, DC1]"},
        {"tolerance", Given::at_will, "the share of a quantity by which a delivery may be under or over", "",
         "{under: 0.05, over: 0.05}"},
        {"extras", Given::at_will, "settings of the models for this request; `not in this price` names what is missing",
         "each its own", "{consumables: {coverage: 0.15}}"},
        {"copied_from", Given::at_will, "the saved quote that `quote copy` wrote it from", "", "Q000001"}};
    return keys;
}

}  // namespace flutebook::orders
