// Handlers of the quote search and of new quotes: pricing an enquiry, saving it in the ledger.
#include <memory>

#include "host/answers/quote_json.hpp"
#include "host/base/errors.hpp"
#include "host/beside/answer.hpp"
#include "host/beside/asked_fields.hpp"
#include "host/command_line/search_readers.hpp"
#include "host/orders/enquiry.hpp"
#include "host/orders/request.hpp"
#include "host/orders/request_text.hpp"
#include "host/pages/field_words.hpp"
#include "host/pages/quote_desk.hpp"
#include "host/pages/quote_list_page.hpp"
#include "host/quoting/approval.hpp"
#include "host/quoting/quote.hpp"
#include "host/saved_quotes/find_quotes.hpp"
#include "host/saved_quotes/saved_quote.hpp"
#include "host/web/handlers.hpp"
#include "host/web/query_values.hpp"

namespace flutebook::web {

namespace {

namespace query = pages::beside_query;
constexpr beside::Names beside_names{query::with, query::boards, query::margins,    query::prices, query::rank,
                                     query::ect,  query::bct,    query::corrugator, query::roll,   query::ups};

namespace label = pages::beside_label;
constexpr beside::Names beside_labels{label::with, label::boards, label::margins,    label::prices, label::rank,
                                      label::ect,  label::bct,    label::corrugator, label::roll,   label::ups};

// An enquiry that was understood, and what it costs.
struct NewQuote {
    std::string understood;
    answers::QuoteOptions asked;
    answers::RequestAnswer answer;
};

std::optional<std::string> figure_asked(const Call& call, const orders::Request& request) {
    const auto view = pages::answer_view(pages::Address::here(), call.target.query.all());
    if (view.figure.empty()) return std::nullopt;
    if (call.wants_json() && !view.quantity) return view.figure;
    return pages::asked_figure(view, view.quantity.value_or(request.quantities.front()));
}

NewQuote cost_enquiry(const Call& call, const base::Node& tree, const answers::ForcedWay& way = {}) {
    const workplace::Workplace& workplace = call.desk.workplace;
    const orders::Request request =
        orders::read_request(workplace.plant, tree, orders::enquiry_name, orders::request_text(tree), std::nullopt,
                             workplace.engine.extras_check(workplace.plant));
    answers::QuoteOptions asked;
    asked.explain = figure_asked(call, request);
    asked.has_drawings = !call.wants_json();
    asked.way = way;
    return {orders::enquiry_in_words(tree), asked, quoting::quote(workplace.plant, workplace.engine, request, asked)};
}

base::Node enquiry_of(const Call& call, const Fields& fields) {
    return orders::read_enquiry(call.plant(), pages::asked_line(fields.all()), Call::today());
}

// What stands beside an enquiry is worked out as the command line does, without what a page alone shows.
answers::QuoteOptions plain_options(const beside::Asked& asked) {
    answers::QuoteOptions options;
    options.way = asked.way;
    return options;
}

std::string beside_document(const Call& call, const base::Node& tree, const beside::Asked& asked) {
    const workplace::Workplace& workplace = call.desk.workplace;
    const orders::Request request =
        orders::read_request(workplace.plant, tree, orders::enquiry_name, orders::request_text(tree), std::nullopt,
                             workplace.engine.extras_check(workplace.plant));
    const answers::QuoteOptions options = plain_options(asked);
    beside::AnswerStream document(workplace.plant, asked, options);
    std::string text = document.begin();
    text += document.add(beside::answer(workplace, request, asked, options));
    return text + document.end();
}

// What the desk shows of what somebody types: an answer, or why there is none.
struct Draft {
    pages::DeskEnquiry enquiry = {};
    pages::BesideView beside = {};
    std::optional<NewQuote> quote = {};
};

std::optional<render::Report> beside_report(const Call& call, const orders::Request& request,
                                            const beside::Asked& asked) {
    const workplace::Workplace& workplace = call.desk.workplace;
    const answers::QuoteOptions options = plain_options(asked);
    if (asked.is_any())
        return beside::report(workplace.plant, beside::answer(workplace, request, asked, options), asked);
    if (!asked.way.is_any()) return std::nullopt;
    return beside::report(workplace.plant, what_if::compare_ways(workplace, request, options), asked);
}

// What is wrong with what is asked beside an enquiry leaves the enquiry's own answer as it is.
beside::Asked asked_or_told(const Call& call, pages::BesideView& view) {
    view.asked = pages::beside_fields(call.target.query.all());
    try {
        return beside::asked_by_fields(call.target.query.all(), beside_names, beside_labels);
    } catch (const InputError& error) {
        view.complaints = error.lines();
        return {};
    }
}

void answer_draft(const Call& call, Draft& draft) {
    const base::Node tree = enquiry_of(call, call.target.query);
    draft.enquiry.understood = orders::enquiry_in_words(tree);
    const beside::Asked asked = asked_or_told(call, draft.beside);
    draft.quote.emplace(cost_enquiry(call, tree, asked.way));
    if (draft.quote->answer.model_fault || !draft.beside.complaints.empty()) return;
    try {
        draft.beside.report = beside_report(call, draft.quote->answer.request, asked);
    } catch (const InputError& error) {
        draft.beside.complaints = error.lines();
    } catch (const ModelError& error) {
        draft.beside.complaints = error.lines();
    }
}

Draft draft_of(const Call& call) {
    Draft draft;
    draft.enquiry.line = pages::asked_line(call.target.query.all());
    if (draft.enquiry.line.empty()) return draft;
    try {
        answer_draft(call, draft);
    } catch (const InputError& error) {
        draft.enquiry.complaints = error.lines();
    }
    return draft;
}

std::string quote_document(const Call& call, const NewQuote& quote, const std::string& saved) {
    const workplace::Workplace& workplace = call.desk.workplace;
    answers::QuoteStream document(workplace.plant, workplace.warnings, quote.asked);
    std::string text = document.begin();
    text += document.add(quote.answer, saved, quote.understood);
    return text + document.end();
}

saved_quotes::FindOptions find_options(const Fields& query) {
    saved_quotes::FindOptions find;
    QueryValues values(query);
    values.take("for", cli::read_line(find.customer));
    values.take("request", cli::read_line(find.request));
    values.take("board", cli::read_line(find.board));
    values.take("style", cli::read_line(find.style));
    saved_quotes::SizeSearch size;
    values.take("size", cli::read_searched_size(size.lengths_mm));
    values.take("within", cli::read_tolerance(size.within_share, size.within_mm));
    values.take("from", cli::read_day(find.from));
    values.take("to", cli::read_day(find.to));
    values.take("state", cli::read_state(find.state));
    values.take("before", cli::read_line(find.before));
    std::int64_t limit = 50;
    values.take("limit", cli::read_whole_number({"a number of quotes", 1, 500}, limit));
    values.throw_if_any_is_wrong();
    find.limit = static_cast<std::size_t>(limit);
    if (!size.lengths_mm.empty()) find.size = size;
    return find;
}

}  // namespace

// What is wrong with a search is told beside the form that asks it.
Outcome list_quotes(const Call& call) {
    answers::QuoteList list;
    std::vector<std::string> complaints;
    try {
        const saved_quotes::FindOptions find = find_options(call.target.query);
        if (has_ledger(call)) list = saved_quotes::find_quotes(opened_ledger(call), find);
    } catch (const InputError& error) {
        if (call.wants_json()) throw;
        complaints = error.lines();
    }
    if (call.wants_json()) return json(answers::quote_list_document(list));
    return page(pages::quote_list_page(call.frame(pages::Place::quotes),
                                       {call.plant().units, list, call.target.query.all(), complaints}));
}

Outcome show_new_quote(const Call& call) {
    if (call.wants_json()) {
        const base::Node tree = enquiry_of(call, call.target.query);
        const beside::Asked asked = beside::asked_by_fields(call.target.query.all(), beside_names, beside_names);
        if (asked.is_any()) return json(beside_document(call, tree, asked));
        const NewQuote quote = cost_enquiry(call, tree, asked.way);
        if (quote.answer.model_fault) return refused(call, 500, {*quote.answer.model_fault});
        return json(quote_document(call, quote, ""));
    }
    const Draft draft = draft_of(call);
    const workplace::Workplace& workplace = call.desk.workplace;
    auto view =
        pages::answer_view(pages::desk_address(draft.enquiry.line, draft.beside.asked), call.target.query.all());
    view.open_plant = &workplace.plant;
    const answers::RequestAnswer* answer = draft.quote ? &draft.quote->answer : nullptr;
    const bool needs_approval = answer != nullptr && !quoting::approval_warnings(workplace.plant, *answer).empty();
    Response response = page(pages::quote_desk_page(
        call.frame(pages::Place::quotes),
        {workplace.plant, workplace.engine.graph().models, draft.enquiry, view, answer, draft.beside, needs_approval}));
    if (answer != nullptr && answer->model_fault) response.status = 500;
    return response;
}

Outcome save_new_quote(const Call& call) {
    const auto quote = std::make_shared<NewQuote>(cost_enquiry(call, enquiry_of(call, call.form)));
    if (quote->answer.model_fault) return refused(call, 500, {*quote->answer.model_fault});
    if (!saved_quotes::can_be_saved(quote->answer))
        return refused(call, 422, {"quote: nothing to save: no quantity can be made; ask for another"});
    std::optional<std::string> approver;
    if (!call.form.at("approver").empty()) approver = call.form.at("approver");
    quoting::ApprovalVerdict verdict = quoting::approve(call.plant(), quote->answer, approver);
    if (!verdict.refusals.empty()) return refused(call, 422, verdict.refusals);
    quote->answer.approval = std::move(verdict.approval);
    return Act([&call, quote] {
        auto store = ledger::Store::open_for_writing(call.desk.ledger, ledger::IfMissing::create);
        const std::string number =
            saved_quotes::save_quote(store, call.desk.workplace, {quote->answer, quote->asked}, call.session.person);
        if (call.wants_json()) return json(quote_document(call, *quote, number));
        return see_other(pages::Address("/quotes").at(number));
    });
}

}  // namespace flutebook::web
