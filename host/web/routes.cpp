#include "host/web/routes.hpp"

#include "host/web/handlers.hpp"

namespace flutebook::web {

namespace {

constexpr std::size_t form_bytes = std::size_t{64} * 1024, document_bytes = std::size_t{16} * 1024 * 1024;

Route get(std::string_view pattern, pages::Role least, Handler handler) {
    return {"GET", pattern, least, Route::Body::none, 0, Route::Proof::none, handler};
}

Route post(std::string_view pattern, pages::Role least, Handler handler) {
    return {"POST", pattern, least, Route::Body::form, form_bytes, Route::Proof::token, handler};
}

}  // namespace

// The first that matches counts.
const std::vector<Route>& routes() {
    using pages::Role;
    static const std::vector<Route> table = {
        get("/", Role::nobody, show_home),
        get("/assets/{}", Role::nobody, show_asset),
        get("/session", Role::nobody, show_session),
        {"POST", "/session", Role::nobody, Route::Body::form, form_bytes, Route::Proof::origin, begin_session},
        post("/session/end", Role::reader, end_session),
        get("/users", Role::keeper, show_users),
        get("/quotes", Role::reader, list_quotes),
        get("/quotes/new", Role::accountant, show_new_quote),
        post("/quotes", Role::accountant, save_new_quote),
        get("/quotes/{}.html", Role::reader, show_quote_sheet),
        get("/quotes/{}.xlsx", Role::reader, show_quote_workbook),
        get("/quotes/{}.svg", Role::reader, show_quote_drawing),
        get("/quotes/{}", Role::reader, show_quote),
        get("/quotes/{}/lines/{}", Role::reader, show_quote_line),
        get("/quotes/{}/recheck", Role::reader, recheck_quote),
        post("/quotes/{}/mark", Role::accountant, mark_quote),
        post("/quotes/{}/order", Role::accountant, take_order),
        get("/orders", Role::reader, list_orders),
        get("/orders/{}/cost", Role::reader, show_order_cost),
        get("/months", Role::reader, list_months),
        get("/months/{}.html", Role::reader, show_month_sheet),
        get("/months/{}.xlsx", Role::reader, show_month_workbook),
        get("/months/{}.csv", Role::reader, show_month_rows),
        get("/months/{}", Role::reader, show_month),
        get("/months/{}/causes/{}", Role::reader, show_cause),
        get("/months/{}/closing", Role::controller, show_closing),
        post("/months/{}/closing", Role::controller, close_month),
        get("/entries", Role::reader, list_entries),
        get("/entries/{}", Role::reader, show_entry),
        post("/entries/{}/reversal", Role::controller, reverse_entry),
        get("/documents", Role::controller, show_documents),
        {"POST", "/documents", Role::controller, Route::Body::form_or_csv, document_bytes, Route::Proof::token,
         try_document},
        post("/documents/{}", Role::controller, post_document),
        get("/models", Role::reader, list_models),
        get("/models/{}", Role::reader, show_model),
        get("/facts", Role::reader, list_facts),
        get("/plant", Role::reader, list_plant_files),
        get("/plant/{}", Role::reader, show_plant_file),
        get("/styles", Role::reader, list_styles),
        get("/styles/{}", Role::reader, show_style),
        get("/guide", Role::reader, list_guides),
        get("/guide/{}", Role::reader, show_guide),
        post("/reload", Role::keeper, reload_plant),
        get("/ledger/proof", Role::reader, prove_ledger),
    };
    return table;
}

std::optional<std::vector<std::string>> match(std::string_view pattern, const std::vector<std::string>& segments) {
    std::vector<std::string> parts;
    std::size_t at = 0;
    for (pattern.remove_prefix(1); !pattern.empty(); ++at) {
        const std::string_view one = pattern.substr(0, pattern.find('/'));
        pattern.remove_prefix(std::min(one.size() + 1, pattern.size()));
        if (at == segments.size()) return std::nullopt;
        const std::string& segment = segments[at];
        if (one.substr(0, 2) != "{}") {
            if (one != segment) return std::nullopt;
            continue;
        }
        const std::string_view ending = one.substr(2);
        if (segment.size() <= ending.size() || segment.substr(segment.size() - ending.size()) != ending)
            return std::nullopt;
        parts.push_back(segment.substr(0, segment.size() - ending.size()));
    }
    if (at != segments.size()) return std::nullopt;
    return parts;
}

}  // namespace flutebook::web
