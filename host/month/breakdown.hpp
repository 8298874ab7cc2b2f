// A month by machine, shift, board or order: what each made and lost.
#pragma once

#include <string>
#include <vector>

#include "ledger/reading/month.hpp"

namespace flutebook::month {

/// One cause under one machine, shift, board or order.
struct PartCause {
    std::string cause;
    Grams actual, expected;

    [[nodiscard]] Grams excess() const { return actual - expected; }
};

struct PartFlows {
    std::string of;                 // empty: entries that name none
    Grams issued;                   // paper from its store
    Grams sheets;                   // good sheets off the corrugators
    Grams fed;                      // to converters
    Grams product;                  // what reached finished goods, less what came back as scrap
    std::vector<PartCause> causes;  // by the order of their bytes

    [[nodiscard]] Grams lost() const;
    [[nodiscard]] Grams expected() const;
};

/// Causes that are weighed are weighed by machine and shift: rows of runs alone name an order and its board.
enum class WeighedCauses { kept, left_out };

/// What a breakdown by this axis does with them, in actual and expected losses alike.
[[nodiscard]] WeighedCauses weighed_causes(ledger::Axis axis);

/// By the order of their names; parts that moved nothing are left out. Their losses add up to the month's, but for
/// weighed causes that are left out.
[[nodiscard]] std::vector<PartFlows> breakdown(const std::vector<ledger::Share>& shares,
                                               const std::vector<ledger::ExpectedShare>& expected,
                                               WeighedCauses weighed);

}  // namespace flutebook::month
