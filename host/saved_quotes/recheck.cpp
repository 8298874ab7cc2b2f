#include "host/saved_quotes/recheck.hpp"

#include <algorithm>
#include <utility>

#include "host/answers/figures.hpp"
#include "host/answers/quote_json.hpp"
#include "host/base/errors.hpp"
#include "host/quoting/quote.hpp"
#include "host/saved_quotes/changes.hpp"
#include "host/saved_quotes/saved_workplace.hpp"
#include "host/trim_history/trim_history.hpp"

namespace flutebook::saved_quotes {

namespace {

using answers::Cause;
using answers::Reproduction;
using answers::TodaysAnswer;

// One way of working the quote out again: its document, or why there is none.
struct Recosted {
    std::string text;  // empty where there is none
    std::optional<answers::QuoteDocument> document;
    TodaysAnswer::Ends ends = TodaysAnswer::Ends::answered;
    std::vector<std::string> complaints;
    std::optional<base::Date> date;
};

Recosted unanswered(TodaysAnswer::Ends ends, std::vector<std::string> complaints) {
    return {"", std::nullopt, ends, std::move(complaints), std::nullopt};
}

// The document is read back, so that both sides of every comparison went through the same writer and reader. Who
// approved is no figure: it stays as it was.
Recosted answered(const workplace::Workplace& workplace, const orders::Request& request,
                  const answers::QuoteOptions& asked, const std::optional<answers::Approval>& approval) {
    answers::RequestAnswer answer = quoting::quote(workplace.plant, workplace.engine, request, asked);
    answer.approval = approval;
    if (answer.model_fault)
        return {"", std::nullopt, TodaysAnswer::Ends::model_at_fault, {*answer.model_fault}, request.date};
    std::string text = answers::quote_text(workplace.plant, answer, asked);
    answers::QuoteDocument document = answers::read_quote("today's answer", text);
    return {std::move(text), std::move(document), TodaysAnswer::Ends::answered, {}, request.date};
}

// The place where the errors of one request are caught: a saved quote that cannot be worked out again is an answer.
template <typename Work>
Recosted around_one_request(const Work& work) {
    try {
        return work();
    } catch (const InputError& error) {
        return unanswered(TodaysAnswer::Ends::refused, error.lines());
    } catch (const ModelError& error) {
        return unanswered(TodaysAnswer::Ends::model_at_fault, error.lines());
    }
}

Recosted from_saved_files(const ledger::SavedQuote& quote, const RecheckOptions& asked) {
    return around_one_request([&] {
        const workplace::Workplace workplace = open_saved(quote, asked.folder);
        const answers::QuoteOptions then{asked.threads, saved_options(quote).explain};
        return answered(workplace, saved_request(quote, workplace.plant), then, saved_document(quote).answer.approval);
    });
}

Recosted from_todays_files(const ledger::SavedQuote& quote, const workplace::Workplace& today,
                           const RecheckOptions& asked) {
    return around_one_request([&] {
        return answered(today, saved_request(quote, today.plant, asked.date), {asked.threads, std::nullopt},
                        std::nullopt);
    });
}

Reproduction reproduction(const ledger::SavedQuote& quote, const Recosted& again) {
    using Ends = Reproduction::Ends;
    if (!again.document) return {Ends::unfit, again.complaints, {}};
    const bool is_same = again.text == part_of(quote, "answer.json");
    return {is_same ? Ends::to_the_byte : Ends::otherwise, {}, totals_of(again.document->answer)};
}

std::vector<answers::Difference> heading_between(const answers::QuoteDocument& was, const answers::QuoteDocument& now) {
    return differences(answers::heading_figures(was.plant), answers::heading_figures(now.plant));
}

TodaysAnswer todays_answer(const answers::QuoteDocument& was, const Recosted& again) {
    if (!again.document) return {again.ends, again.complaints, {}, changed_quantities(was.answer, nullptr)};
    return {
        again.ends, {}, heading_between(was, *again.document), changed_quantities(was.answer, &again.document->answer)};
}

bool is_same(const answers::QuoteDocument& was, const answers::QuoteDocument& now) {
    const auto quantities = changed_quantities(was.answer, &now.answer);
    return heading_between(was, now).empty() &&
           std::none_of(quantities.begin(), quantities.end(),
                        [](const answers::ChangedQuantity& quantity) { return quantity.differs(); });
}

std::optional<plant::TrimPolicy> trim_of(const answers::QuoteDocument& document) {
    return document.answer.trim ? std::optional(document.answer.trim->policy) : std::nullopt;
}

// Files that say the same, and a share that does not: the ledger has gone on.
bool is_of_ledger(const answers::Recheck& checked) {
    return checked.cause == Cause::plant_files && checked.keys.empty() && !checked.new_date && checked.trim.differs();
}

Cause cause_of(const answers::QuoteDocument& was, const Recosted& by_plugins, const Recosted& today) {
    if (today.document && is_same(was, *today.document)) return Cause::nothing_differs;
    if (!by_plugins.document) return Cause::unknown;
    if (is_same(was, *by_plugins.document)) return Cause::plant_files;
    return today.document && is_same(*by_plugins.document, *today.document) ? Cause::plugins : Cause::both;
}

}  // namespace

answers::Recheck recheck(const ledger::SavedQuote& quote, const RecheckOptions& asked) {
    workplace::Workplace today = workplace::open(asked.folder);
    today.plant.trim_source = trim_history::trim_source(asked.ledger);
    const answers::QuoteDocument was = saved_document(quote);
    const Recosted by_plugins = from_saved_files(quote, asked);
    const Recosted now = from_todays_files(quote, today, asked);
    answers::Recheck result{quote.number,
                            quote.request,
                            quote.who,
                            quote.when,
                            saved_options(quote).date,
                            today.plant,
                            changed_keys(quote, today.plant),
                            changed_plugins(quote, today.engine.graph()),
                            reproduction(quote, by_plugins),
                            todays_answer(was, now),
                            cause_of(was, by_plugins, now)};
    if (!result.date) result.date = by_plugins.date ? by_plugins.date : asked.date ? std::nullopt : now.date;
    result.new_date = asked.date;
    result.trim.was = trim_of(was);
    if (now.document) result.trim.now = trim_of(*now.document);
    if (is_of_ledger(result)) result.cause = Cause::ledger;
    return result;
}

}  // namespace flutebook::saved_quotes
