// An order record as the ledger keeps it: JSON, written once when the order is taken, and never changed.
//
// {"number", "quote", "quantity", "customer", "board", "style",
//  "plies": [{"paper", "grammage", "take_up", "adhesive"}...], "grammage", "adhesive", "adhesive_rate",
//  "corrugator", "roll_width_mm", "outs", "slit_mm", "chop_mm", "sheet_area_m2", "ups", "box_area_m2",
//  "route": [machine...], "parting",
//  "corrugators": [{"code", "run_waste", "roll_loss", "order_change_m"}...],
//  "converters": [{"code", "kind" (as machines.yaml spells it), "run_waste", "setup_sheets"}...],
//  "lost_otherwise_by" (only where the quote's losses are not those of the formulas of a run: the model's id),
//  "piece", "sets" (only of a piece of a set: its name, and how many sets)}
#pragma once

#include <optional>
#include <string>

#include "host/orders/order_record.hpp"

namespace flutebook::orders {

/// The part of a saved order that holds its record.
inline constexpr const char* order_record_part = "record.json";

/// Numbers are the shortest that read back as the same double.
[[nodiscard]] std::string to_json(const OrderRecord& order);

/// Nothing where the text is no order record.
[[nodiscard]] std::optional<OrderRecord> order_record_of(const std::string& json);

}  // namespace flutebook::orders
