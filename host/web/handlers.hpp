// The handlers of the routes. Each works as the command of the same name does, by the same services, and computes
// nothing itself.
#pragma once

#include "host/web/call.hpp"

namespace flutebook::web {

// session_handlers.cpp
[[nodiscard]] Outcome show_home(const Call& call);
[[nodiscard]] Outcome show_asset(const Call& call);
[[nodiscard]] Outcome show_session(const Call& call);
[[nodiscard]] Outcome begin_session(const Call& call);
[[nodiscard]] Outcome end_session(const Call& call);
[[nodiscard]] Outcome show_users(const Call& call);

// quote_handlers.cpp
[[nodiscard]] Outcome list_quotes(const Call& call);
[[nodiscard]] Outcome show_new_quote(const Call& call);
[[nodiscard]] Outcome save_new_quote(const Call& call);

// saved_quote_handlers.cpp
[[nodiscard]] Outcome show_quote(const Call& call);
[[nodiscard]] Outcome show_quote_sheet(const Call& call);
[[nodiscard]] Outcome show_quote_workbook(const Call& call);
[[nodiscard]] Outcome recheck_quote(const Call& call);
[[nodiscard]] Outcome mark_quote(const Call& call);
[[nodiscard]] Outcome take_order(const Call& call);

// quote_part_handlers.cpp
[[nodiscard]] Outcome show_quote_drawing(const Call& call);
[[nodiscard]] Outcome show_quote_line(const Call& call);

// month_handlers.cpp
[[nodiscard]] Outcome list_months(const Call& call);
[[nodiscard]] Outcome show_month(const Call& call);
[[nodiscard]] Outcome show_month_sheet(const Call& call);
[[nodiscard]] Outcome show_month_workbook(const Call& call);
[[nodiscard]] Outcome show_month_rows(const Call& call);
[[nodiscard]] Outcome show_cause(const Call& call);
[[nodiscard]] Outcome show_closing(const Call& call);
[[nodiscard]] Outcome close_month(const Call& call);

// ledger_handlers.cpp
[[nodiscard]] Outcome list_entries(const Call& call);
[[nodiscard]] Outcome show_entry(const Call& call);
[[nodiscard]] Outcome reverse_entry(const Call& call);
[[nodiscard]] Outcome list_orders(const Call& call);
[[nodiscard]] Outcome show_order_cost(const Call& call);
[[nodiscard]] Outcome prove_ledger(const Call& call);

// document_handlers.cpp
[[nodiscard]] Outcome show_documents(const Call& call);
[[nodiscard]] Outcome try_document(const Call& call);
[[nodiscard]] Outcome post_document(const Call& call);

// reload.cpp
[[nodiscard]] Outcome reload_plant(const Call& call);

// plant_handlers.cpp
[[nodiscard]] Outcome list_models(const Call& call);
[[nodiscard]] Outcome show_model(const Call& call);
[[nodiscard]] Outcome list_facts(const Call& call);
[[nodiscard]] Outcome list_plant_files(const Call& call);
[[nodiscard]] Outcome show_plant_file(const Call& call);
[[nodiscard]] Outcome list_styles(const Call& call);
[[nodiscard]] Outcome show_style(const Call& call);
[[nodiscard]] Outcome list_guides(const Call& call);
[[nodiscard]] Outcome show_guide(const Call& call);

}  // namespace flutebook::web
