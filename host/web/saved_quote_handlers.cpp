// Handlers of saved quotes: show, sheets, recheck, mark, take as an order.
#include <fmt/format.h>

#include "host/answers/recheck_answer.hpp"
#include "host/base/errors.hpp"
#include "host/command_line/search_readers.hpp"
#include "host/month_answers/order_answer.hpp"
#include "host/offers/offer_report.hpp"
#include "host/pages/report_page.hpp"
#include "host/pages/saved_quote_page.hpp"
#include "host/render/html_report.hpp"
#include "host/reports/kept_quote_report.hpp"
#include "host/reports/recheck_report.hpp"
#include "host/saved_quotes/costed_again.hpp"
#include "host/saved_quotes/drawn_quote.hpp"
#include "host/saved_quotes/find_quotes.hpp"
#include "host/saved_quotes/offered_quote.hpp"
#include "host/saved_quotes/recheck.hpp"
#include "host/saved_quotes/saved_quote.hpp"
#include "host/services/orders/order.hpp"
#include "host/web/documents.hpp"
#include "host/web/handlers.hpp"
#include "host/web/query_values.hpp"
#include "host/workbooks/quote_workbook.hpp"
#include "ledger/reading/entries.hpp"

namespace flutebook::web {

namespace {

struct KeptQuote {
    ledger::SavedQuote quote;
    answers::ListedQuote listed;
};

KeptQuote kept_quote(const Call& call, const std::string& number) {
    const ledger::Store store = opened_ledger(call);
    return {saved_quotes::saved_quote(store, number), saved_quotes::listed_quote(store, number)};
}

// A kept quote as its page takes it.
class ShownQuote {
public:
    ShownQuote(const Call& call, const KeptQuote& kept)
        : kept_(kept),
          document_(saved_quotes::drawn_document(kept.quote, call.plant().folder)),
          view_(pages::answer_view(pages::Address("/quotes").at(kept.quote.number), call.target.query.all())) {
        view_.origins = pages::AnswerView::Origins::apart;
        view_.open_plant = &call.plant();
    }

    [[nodiscard]] pages::SavedQuotePage page() const {
        pages::SavedQuotePage result{document_.plant, document_.answer, kept_.listed, view_};
        result.request_text = saved_quotes::part_of(kept_.quote, "request.yaml");
        if (document_.version == 0) result.printed = saved_quotes::part_of(kept_.quote, "answer.txt");
        return result;
    }

private:
    const KeptQuote& kept_;
    answers::QuoteDocument document_;
    pages::AnswerView view_;
};

// A sheet fills its page, so that it prints as it is seen.
render::PageLook::WayBack back_to_quote(const KeptQuote& kept) {
    return {pages::Address("/quotes").at(kept.quote.number).text(), "Back to quote " + kept.quote.number};
}

std::string kept_sheet(const KeptQuote& kept, const std::string& folder) {
    const answers::QuoteDocument document = saved_quotes::drawn_document(kept.quote, folder);
    const std::string printed = document.version == 0 ? saved_quotes::part_of(kept.quote, "answer.txt") : "";
    render::PageLook look;
    look.back = back_to_quote(kept);
    return render::to_html({reports::kept_quote_report(document, printed, kept.listed)}, look);
}

std::string customers_sheet(const KeptQuote& kept, const std::string& folder) {
    const saved_quotes::OfferedQuote offered = saved_quotes::offered_quote(kept.quote, folder);
    if (!offers::can_be_offered(offered.answer))
        throw InputError(InputError::Whose::request, {fmt::format("offer: nothing to offer: found no quantity with a "
                                                                  "price in {}; quote one that can be made",
                                                                  kept.quote.number)});
    const offers::OfferWords words = offers::read_offer_words(offered.plant.folder);
    return offers::offer_page(offered.plant, words,
                              {offers::offer_report({offered.plant, offered.answer, words, kept.quote.number,
                                                     offers::conditions_of(offered.plant, offered.answer)})},
                              back_to_quote(kept));
}

}  // namespace

Outcome show_quote(const Call& call) {
    const KeptQuote kept = kept_quote(call, call.parts.front());
    if (call.wants_json()) return json(saved_quotes::part_of(kept.quote, "answer.json"));
    const ShownQuote shown(call, kept);
    const pages::Frame frame = call.frame(pages::Place::quotes);
    const std::string& other = call.target.query.at(pages::beside_field);
    if (other.empty()) return page(pages::saved_quote_page(frame, shown.page()));
    const KeptQuote kept_beside = kept_quote(call, other);
    return page(pages::quotes_beside_page(frame, shown.page(), ShownQuote(call, kept_beside).page()));
}

Outcome show_quote_sheet(const Call& call) {
    const KeptQuote kept = kept_quote(call, call.parts.front());
    const bool is_offer = call.target.query.at("for") == "customer";
    const std::string html =
        is_offer ? customers_sheet(kept, call.plant().folder) : kept_sheet(kept, call.plant().folder);
    Response response = sheet(html);
    response.headers.emplace_back("content-disposition", fmt::format("inline; filename=\"{}{}.html\"",
                                                                     kept.quote.number, is_offer ? "-offer" : ""));
    return response;
}

// A workbook is made of a costing, which no saved quote keeps: it is made again, and must be the one that was saved.
Outcome show_quote_workbook(const Call& call) {
    const KeptQuote kept = kept_quote(call, call.parts.front());
    const std::string& number = kept.quote.number;
    const saved_quotes::CostedAgain again = saved_quotes::cost_again(kept.quote, call.plant().folder, std::nullopt);
    const DocumentFile file("");
    const std::string fault = render::write_formula_book(
        file.path(), workbooks::quote_workbook(again.then.plant, again.then.engine, again.answer, again.asked),
        static_cast<int>(again.answer.request.date.year()));
    if (!fault.empty()) throw LedgerError(LedgerError::Kind::unfit, fmt::format("{}.xlsx: {}", number, fault));
    return workbook(number + ".xlsx", file.text());
}

Outcome recheck_quote(const Call& call) {
    std::optional<base::Date> date;
    QueryValues values(call.target.query);
    values.take("date", cli::read_day(date));
    values.throw_if_any_is_wrong();
    const answers::Recheck checked = saved_quotes::recheck(kept_quote(call, call.parts.front()).quote,
                                                           {call.plant().folder, call.desk.ledger, 1, date});
    if (call.wants_json()) return json(answers::recheck_document(checked));
    return page(
        pages::report_page(call.frame(pages::Place::quotes), "What differs today", {reports::recheck_report(checked)}));
}

Outcome mark_quote(const Call& call) {
    std::optional<std::string> state;
    std::string why;
    QueryValues values(call.form);
    values.expect("state", cli::read_state(state));
    values.take("why", cli::read_line(why));
    values.throw_if_any_is_wrong();
    return Act([&call, state, why] {
        const std::string& number = call.parts.front();
        auto store = ledger::Store::open_for_writing(call.desk.ledger, ledger::IfMissing::refuse);
        const answers::QuoteMark mark = saved_quotes::mark_quote(store, number, *state, why, call.session.person);
        if (call.wants_json()) return json(answers::mark_document(number, mark, ledger::head(store)->hash));
        return see_other(pages::Address("/quotes").at(number));
    });
}

Outcome take_order(const Call& call) {
    std::int64_t quantity = 0;
    std::string as;
    QueryValues values(call.form);
    values.expect("quantity", cli::read_whole_number({"quantity", 1}, quantity));
    values.take("as", cli::read_line(as));
    values.throw_if_any_is_wrong();
    return Act([&call, quantity, as] {
        auto store = ledger::Store::open_for_writing(call.desk.ledger, ledger::IfMissing::refuse);
        const auto orders =
            services::take_order(store, {call.parts.front(), static_cast<double>(quantity), as, call.session.person});
        if (call.wants_json()) return json(answers::order_document(orders));
        return see_other(pages::Address("/quotes").at(call.parts.front()));
    });
}

}  // namespace flutebook::web
