// Handlers of months: the list, the review, one cause, and the close.
#include <fmt/format.h>

#include <limits>

#include "host/month_answers/month_answer.hpp"
#include "host/month_answers/month_review.hpp"
#include "host/month_pages/month_page.hpp"
#include "host/month_pages/month_rows.hpp"
#include "host/month_reports/month_report.hpp"
#include "host/pages/report_page.hpp"
#include "host/render/html_report.hpp"
#include "host/render/text_exports.hpp"
#include "host/render/workbook_report.hpp"
#include "host/services/closing/close.hpp"
#include "host/services/closing/month.hpp"
#include "host/services/closing/review.hpp"
#include "host/web/documents.hpp"
#include "host/web/handlers.hpp"
#include "host/web/query_values.hpp"

namespace flutebook::web {

namespace {

ledger::Month month_of(const Call& call) {
    ledger::Month month{};
    read_part("month", call.parts.front(), cli::read_month(month));
    return month;
}

answers::MonthAnswer month_answer(const Call& call, std::optional<ledger::Axis> by) {
    using Trend = services::MonthOptions::Trend;
    const Trend trend = call.wants_json() ? Trend::none : Trend::twelve_months;
    return services::month(call.plant(), opened_ledger(call), {month_of(call), by, trend, Call::today()});
}

// The account as the command line writes it to a file, with the months before it.
render::Report account_report(const Call& call) {
    using Trend = services::MonthOptions::Trend;
    return month_reports::month_report(
        call.plant(), services::month(call.plant(), opened_ledger(call),
                                      {month_of(call), std::nullopt, Trend::twelve_months, Call::today()}));
}

answers::MonthReview review_of(const Call& call) {
    services::ReviewOptions asked{month_of(call), Call::today()};
    if (call.target.query.at("orders") == "ranked") asked.most_movements = std::numeric_limits<std::int64_t>::max();
    return services::month_review(call.plant(), opened_ledger(call), asked);
}

}  // namespace

Outcome list_months(const Call& call) {
    answers::MonthList list;
    list.currency = call.plant().currency;
    if (has_ledger(call)) list = services::month_list(call.plant(), opened_ledger(call));
    if (call.wants_json()) return json(answers::month_list_document(list));
    return page(pages::month_list_page(call.frame(pages::Place::months), list));
}

// The document of `month --json`; with `review`, that of the page.
Outcome show_month(const Call& call) {
    std::optional<ledger::Axis> by;
    QueryValues values(call.target.query);
    values.take("by", [&by](const std::string& text) {
        by = services::axis_of(text);
        return by ? std::string() : "is not a way to break down a month; write machine, shift, board or order";
    });
    values.throw_if_any_is_wrong();
    const bool is_review = call.target.query.has("review");
    if (call.wants_json() && is_review) return json(answers::month_review_document(review_of(call)));
    if (call.wants_json()) return json(answers::month_document(month_answer(call, by)));
    const pages::Frame frame = call.frame(pages::Place::months);
    if (!by) return page(pages::month_page(frame, call.plant(), review_of(call)));
    return page(pages::report_page(frame, answers::month_name(month_of(call)),
                                   {month_reports::month_report(call.plant(), month_answer(call, by))}));
}

Outcome show_month_sheet(const Call& call) {
    Response response = sheet(render::to_html({account_report(call)}));
    response.headers.emplace_back("content-disposition",
                                  fmt::format("inline; filename=\"{}.html\"", call.parts.front()));
    return response;
}

Outcome show_month_workbook(const Call& call) {
    const DocumentFile file("");
    const std::string fault =
        render::write_workbook(file.path(), account_report(call), static_cast<int>(month_of(call).year()));
    if (!fault.empty())
        throw LedgerError(LedgerError::Kind::unfit, fmt::format("{}.xlsx: {}", call.parts.front(), fault));
    return workbook(call.parts.front() + ".xlsx", file.text());
}

Outcome show_month_rows(const Call& call) {
    return attachment("text/csv; charset=utf-8", call.parts.front() + ".csv", render::to_csv(account_report(call)));
}

Outcome show_cause(const Call& call) {
    const auto answer = services::cause_review(call.plant(), opened_ledger(call), month_of(call), call.parts.back());
    if (call.wants_json()) return json(answers::cause_review_document(answer));
    return page(pages::month_cause_page(call.frame(pages::Place::months), answer));
}

Outcome show_closing(const Call& call) {
    const answers::MonthReview review = review_of(call);
    if (call.wants_json()) return json(answers::month_review_document(review));
    return page(pages::month_closing_page(call.frame(pages::Place::months), review));
}

Outcome close_month(const Call& call) {
    const ledger::Month month = month_of(call);
    std::string why;
    QueryValues values(call.form);
    values.take("why", cli::read_line(why));
    values.throw_if_any_is_wrong();
    const auto empty = call.form.has("empty_months") ? month::EmptyMonths::accept : month::EmptyMonths::refuse;
    return Act([&call, month, why, empty] {
        auto store = ledger::Store::open_for_writing(call.desk.ledger, ledger::IfMissing::refuse);
        const auto answer =
            services::close(call.plant(), store, {month, why, call.session.person, Call::today(), empty});
        if (call.wants_json()) return json(answers::close_document(answer));
        // Its seal stands there, to be kept elsewhere.
        return see_other(pages::Address("/months").at(call.parts.front()).to("closing"));
    });
}

}  // namespace flutebook::web
