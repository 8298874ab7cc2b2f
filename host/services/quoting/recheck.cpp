#include "host/services/quoting/recheck.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <utility>

#include "host/base/errors.hpp"
#include "host/services/quoting/saved_workplace.hpp"

namespace flutebook::services {

namespace {

using Json = nlohmann::ordered_json;

// One way of working the quote out again: an answer, or why there is none.
struct Recosted {
    std::optional<answers::Shown> shown;
    answers::TodaysAnswer::Ends ends = answers::TodaysAnswer::Ends::answered;
    std::vector<std::string> complaints;
    std::optional<base::Date> date;
};

// The document with one request that every saved answer is. Trails are a view of the figures that are there anyway.
Json read_answer(const std::string& json) {
    Json tree = Json::parse(json);
    for (Json& quote : tree.at("requests").at(0).at("quotes")) quote.erase("explain");
    return tree;
}

const Json& request_in(const Json& document) {
    return document.at("requests").at(0);
}

Recosted answered(const Workplace& workplace, const orders::Request& request, const answers::QuoteOptions& asked,
                  const Show& show) {
    const answers::RequestAnswer answer = quote(workplace.plant, workplace.engine, request, asked);
    if (answer.model_fault)
        return {std::nullopt, answers::TodaysAnswer::Ends::model_at_fault, {*answer.model_fault}, request.date};
    return {show(workplace.plant, answer, asked), answers::TodaysAnswer::Ends::answered, {}, request.date};
}

// The place where the errors of one request are caught: a saved quote that cannot be worked out again is an answer.
template <typename Work>
Recosted around_one_request(const Work& work) {
    try {
        return work();
    } catch (const InputError& error) {
        return {std::nullopt, answers::TodaysAnswer::Ends::refused, error.lines(), std::nullopt};
    } catch (const ModelError& error) {
        return {std::nullopt, answers::TodaysAnswer::Ends::model_at_fault, error.lines(), std::nullopt};
    }
}

Recosted from_saved_files(const ledger::SavedQuote& quote, const RecheckOptions& asked, const Show& show) {
    return around_one_request([&] {
        const Workplace workplace = open_saved(quote, asked.folder);
        answers::QuoteOptions then{asked.threads, saved_options(quote).explain};
        return answered(workplace, saved_request(quote, workplace.plant), then, show);
    });
}

Recosted from_todays_files(const ledger::SavedQuote& quote, const Workplace& today, unsigned threads,
                           const Show& show) {
    return around_one_request([&] {
        return answered(today, saved_request(quote, today.plant), {threads, std::nullopt}, show);
    });
}

answers::Reproduction reproduction(const ledger::SavedQuote& quote, const Recosted& again) {
    using Ends = answers::Reproduction::Ends;
    if (!again.shown) return {Ends::unfit, again.complaints, {}};
    const bool is_same =
        again.shown->text == part_of(quote, "answer.txt") && again.shown->json == part_of(quote, "answer.json");
    return {is_same ? Ends::to_the_byte : Ends::otherwise, {}, totals_of(request_in(read_answer(again.shown->json)))};
}

std::vector<answers::Leaf> heading_of(Json document) {
    document.erase("requests");
    return leaves_of(document);
}

answers::TodaysAnswer todays_answer(const Json& was, const Recosted& again) {
    if (!again.shown) return {again.ends, again.complaints, {}, changed_quantities(request_in(was), Json())};
    const Json now = read_answer(again.shown->json);
    return {again.ends,
            {},
            differences(heading_of(was), heading_of(now)),
            changed_quantities(request_in(was), request_in(now))};
}

answers::Cause cause_of(const Json& was, const Recosted& by_plugins, const Recosted& today) {
    const Json now = today.shown ? read_answer(today.shown->json) : Json();
    if (was == now) return answers::Cause::nothing_differs;
    if (!by_plugins.shown) return answers::Cause::unknown;
    const Json between = read_answer(by_plugins.shown->json);
    if (between == was) return answers::Cause::plant_files;
    return between == now ? answers::Cause::plugins : answers::Cause::both;
}

answers::Recheck work_out_again(const ledger::SavedQuote& quote, const RecheckOptions& asked, const Show& show) {
    const Workplace today = open(asked.folder);
    const Json was = read_answer(part_of(quote, "answer.json"));
    const Recosted by_plugins = from_saved_files(quote, asked, show);
    const Recosted now = from_todays_files(quote, today, asked.threads, show);
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
    if (!result.date) result.date = by_plugins.date ? by_plugins.date : now.date;
    return result;
}

}  // namespace

answers::Recheck recheck(const ledger::SavedQuote& quote, const RecheckOptions& asked, const Show& show) {
    try {
        return work_out_again(quote, asked, show);
    } catch (const Json::exception&) {
        throw LedgerError(
            LedgerError::Kind::unfit,
            fmt::format("quote {}: its part answer.json cannot be read; run `flutebook verify`", quote.number));
    }
}

}  // namespace flutebook::services
