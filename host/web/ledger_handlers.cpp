// Handlers of entries, reversals, orders and their cost, and the proof of the ledger.
#include <fmt/format.h>

#include "host/month_answers/entry_answer.hpp"
#include "host/month_answers/ledger_answer.hpp"
#include "host/month_answers/month_answer.hpp"
#include "host/month_answers/order_answer.hpp"
#include "host/month_answers/order_list.hpp"
#include "host/month_pages/month_orders.hpp"
#include "host/month_pages/month_rows.hpp"
#include "host/month_reports/ledger_reports.hpp"
#include "host/pages/report_page.hpp"
#include "host/services/closing/close.hpp"
#include "host/services/orders/order.hpp"
#include "host/services/orders/set_cost.hpp"
#include "host/services/posting/entries.hpp"
#include "host/services/posting/reverse.hpp"
#include "host/web/handlers.hpp"
#include "host/web/query_values.hpp"

namespace flutebook::web {

namespace {

constexpr std::size_t orders_a_page = 100;
constexpr const char* searched[] = {"kind", "centre", "shift", "order", "cause"};

// A field that is there and empty asks for entries that name none.
ledger::EntrySearch entry_search(const Call& call) {
    const Fields& query = call.target.query;
    ledger::EntrySearch search;
    search.month = ledger::Month{};
    QueryValues values(query);
    values.expect("month", cli::read_month(search.month));
    values.take("after", cli::read_whole_number({"an entry", 0}, search.after));
    values.throw_if_any_is_wrong();
    std::optional<std::string>* const wanted[] = {&search.kind, &search.centre, &search.shift, &search.order,
                                                  &search.cause};
    for (std::size_t at = 0; at < std::size(searched); ++at)
        if (query.has(searched[at])) *wanted[at] = query.at(searched[at]);
    return search;
}

bool is_searched(const Fields& query) {
    for (const char* name : searched)
        if (query.has(name)) return true;
    return query.has("after");
}

}  // namespace

// The document of `entries --json`; where they are searched, that of the page.
Outcome list_entries(const Call& call) {
    using services::SavedEntries;
    const ledger::EntrySearch search = entry_search(call);
    const ledger::Store store = opened_ledger(call);
    const Fields& query = call.target.query;
    if (call.wants_json() && !is_searched(query))
        return json(answers::entries_document(
            services::entries(store, search.month, query.has("saved") ? SavedEntries::show : SavedEntries::leave_out)));
    const answers::EntryList list = services::entry_list(store, search);
    if (call.wants_json()) return json(answers::entry_list_document(list));
    return page(pages::entry_list_page(call.frame(pages::Place::months), list));
}

Outcome show_entry(const Call& call) {
    std::int64_t number = 0;
    read_part("entry", call.parts.front(), cli::read_whole_number({"an entry", 1}, number));
    const auto answer = services::entry(opened_ledger(call), call.plant().currency, number);
    if (!answer) return refused(call, 404, {fmt::format("entry: no entry has this number: found {}", number)});
    if (call.wants_json()) return json(answers::entry_document(*answer));
    return page(pages::entry_page(call.frame(pages::Place::months), *answer));
}

Outcome reverse_entry(const Call& call) {
    std::string why;
    std::optional<base::Date> date;
    QueryValues values(call.form);
    values.expect("why", cli::read_line(why));
    values.take("date", cli::read_day(date));
    values.throw_if_any_is_wrong();
    return Act([&call, why, date] {
        auto store = ledger::Store::open_for_writing(call.desk.ledger, ledger::IfMissing::refuse);
        const auto entry = services::entry_number(store, call.parts.front());
        const auto answer = services::reverse(store, {entry, why, call.session.person, date});
        if (call.wants_json()) return json(answers::reverse_document(answer));
        return see_other(pages::Address("/entries").at(std::to_string(answer.reversal.number)));
    });
}

Outcome list_orders(const Call& call) {
    std::int64_t number = 1;
    QueryValues values(call.target.query);
    values.take("page", cli::read_whole_number({"a page", 1, 1'000'000}, number));
    values.throw_if_any_is_wrong();
    answers::OrderList list;
    if (has_ledger(call))
        list = services::order_list(opened_ledger(call), static_cast<std::size_t>(number), orders_a_page);
    if (call.wants_json()) return json(answers::order_list_document(list));
    return page(pages::order_list_page(call.frame(pages::Place::orders), list));
}

Outcome show_order_cost(const Call& call) {
    const services::OrderOrSetCost answer = services::cost_of(call.plant(), call.desk.ledger, call.parts.front());
    const pages::Frame frame = call.frame(pages::Place::orders);
    if (const auto* order = std::get_if<answers::OrderCost>(&answer)) {
        if (call.wants_json()) return json(answers::order_cost_document(*order));
        return page(pages::order_cost_page(frame, call.plant(), *order));
    }
    const auto& set = std::get<answers::SetCost>(answer);
    if (call.wants_json()) return json(answers::set_cost_document(set));
    return page(pages::order_cost_page(frame, call.plant(), set));
}

Outcome prove_ledger(const Call& call) {
    std::optional<std::string> head;
    QueryValues values(call.target.query);
    values.take("head", cli::read_line(head));
    values.throw_if_any_is_wrong();
    const auto proof = services::verify(call.desk.ledger, head);
    if (call.wants_json()) return json(answers::verify_document(proof));
    return page(pages::report_page(call.frame(pages::Place::none), "The ledger's proof",
                                   {month_reports::verify_report(proof)}));
}

}  // namespace flutebook::web
