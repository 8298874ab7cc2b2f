// Months, their entries, what orders cost, and the proof of the ledger: read; and what a controller writes.
#include <fmt/format.h>

#include "host/answers/ledger_answer.hpp"
#include "host/answers/month_answer.hpp"
#include "host/answers/order_answer.hpp"
#include "host/base/errors.hpp"
#include "host/render/html_report.hpp"
#include "host/reports/ledger_reports.hpp"
#include "host/reports/month_report.hpp"
#include "host/reports/order_cost_report.hpp"
#include "host/services/closing/close.hpp"
#include "host/services/closing/month.hpp"
#include "host/services/orders/set_cost.hpp"
#include "host/services/posting/entries.hpp"
#include "host/services/posting/reverse.hpp"
#include "host/web/handlers.hpp"
#include "host/web/query_values.hpp"

namespace flutebook::web {

namespace {

ledger::Month month_of(const std::string& text) {
    ledger::Month month{};
    read_part("month", text, cli::read_month(month));
    return month;
}

ledger::Store reading(const Call& call) {
    return ledger::Store::open_for_reading(call.desk.ledger);
}

ledger::Store writing(const Call& call) {
    return ledger::Store::open_for_writing(call.desk.ledger, ledger::IfMissing::refuse);
}

}  // namespace

Outcome list_months(const Call& call) {
    const ledger::Store store = reading(call);
    const services::MonthReader reader(call.plant(), store);
    if (reader.months().empty())
        return refused(call, 404, {"month: nothing is posted yet; post production documents first"});
    return see_other(pages::Address("/months").at(answers::month_name(reader.months().back())));
}

Outcome show_month(const Call& call) {
    using Trend = services::MonthOptions::Trend;
    const ledger::Month month = month_of(call.parts.front());
    std::optional<ledger::Axis> by;
    QueryValues values(call.target.query);
    values.take("by", [&by](const std::string& text) {
        by = services::axis_of(text);
        return by ? std::string() : "is nothing that a month is broken down by; write machine, shift, board or order";
    });
    values.throw_if_any_is_wrong();
    const auto answer =
        services::month(call.plant(), reading(call),
                        {month, by, call.wants_json() ? Trend::none : Trend::twelve_months, Call::today()});
    if (call.wants_json()) return json(answers::month_document(answer));
    return sheet(render::to_html({reports::month_report(call.plant(), answer)}));
}

Outcome list_entries(const Call& call) {
    using services::SavedEntries;
    ledger::Month month{};
    QueryValues values(call.target.query);
    values.expect("month", cli::read_month(month));
    values.throw_if_any_is_wrong();
    const auto answer = services::entries(
        reading(call), month, call.target.query.has("saved") ? SavedEntries::show : SavedEntries::leave_out);
    if (call.wants_json()) return json(answers::entries_document(answer));
    return sheet(render::to_html({reports::entries_report(answer)}));
}

Outcome show_order_cost(const Call& call) {
    const services::OrderOrSetCost answer = services::cost_of(call.plant(), call.desk.ledger, call.parts.front());
    if (const auto* order = std::get_if<answers::OrderCost>(&answer)) {
        if (call.wants_json()) return json(answers::order_cost_document(*order));
        return sheet(render::to_html({reports::order_cost_report(call.plant(), *order)}));
    }
    const auto& set = std::get<answers::SetCost>(answer);
    if (call.wants_json()) return json(answers::set_cost_document(set));
    return sheet(render::to_html({reports::set_cost_report(call.plant(), set)}));
}

Outcome close_month(const Call& call) {
    const ledger::Month month = month_of(call.parts.front());
    std::string why;
    QueryValues values(call.form);
    values.take("why", cli::read_line(why));
    values.throw_if_any_is_wrong();
    const auto empty = call.form.has("empty_months") ? month::EmptyMonths::accept : month::EmptyMonths::refuse;
    return Act([&call, month, why, empty] {
        auto store = writing(call);
        const auto answer =
            services::close(call.plant(), store, {month, why, call.session.person, Call::today(), empty});
        if (call.wants_json()) return json(answers::close_document(answer));
        return see_other(pages::Address("/months").at(call.parts.front()));
    });
}

Outcome reverse_entry(const Call& call) {
    std::string why;
    std::optional<base::Date> date;
    QueryValues values(call.form);
    values.expect("why", cli::read_line(why));
    values.take("date", cli::read_day(date));
    values.throw_if_any_is_wrong();
    return Act([&call, why, date] {
        auto store = writing(call);
        const auto entry = services::entry_number(store, call.parts.front());
        const auto answer = services::reverse(store, {entry, why, call.session.person, date});
        if (call.wants_json()) return json(answers::reverse_document(answer));
        const ledger::Date day = answer.reversal.draft.date;
        return see_other(
            pages::Address("/entries").with("month", answers::month_name(ledger::Month(day.year(), day.month()))));
    });
}

Outcome prove_ledger(const Call& call) {
    std::optional<std::string> head;
    QueryValues values(call.target.query);
    values.take("head", cli::read_line(head));
    values.throw_if_any_is_wrong();
    const auto proof = services::verify(call.desk.ledger, head);
    if (call.wants_json()) return json(answers::verify_document(proof));
    return sheet(render::to_html({reports::verify_report(proof)}));
}

}  // namespace flutebook::web
