#include "host/cli/beside_run.hpp"

#include <algorithm>
#include <vector>

#include "host/render/text_report.hpp"
#include "host/what_if/board_search.hpp"
#include "host/what_if_reports/alternatives_report.hpp"
#include "host/what_if_reports/board_search_report.hpp"
#include "host/what_if_reports/rank_report.hpp"
#include "host/what_if_reports/what_if_report.hpp"

namespace flutebook::cli {

namespace {

std::vector<std::string> asked_changes(const BesideOptions& options) {
    std::vector<std::string> result;
    for (const what_if::NumberChange& change : options.changes) result.push_back(change.asked);
    return result;
}

std::string as_text(const render::Report& report) {
    return render::to_text(report, text_columns()) + "\n";
}

}  // namespace

BesideRun::BesideRun(const workplace::Workplace& workplace, const BesideOptions& options,
                     const answers::QuoteOptions& asked, AnswerForm form)
    : workplace_(workplace),
      options_(options),
      asked_(asked),
      form_(form),
      changes_(workplace.plant, asked_changes(options)),
      alternatives_(workplace.plant, asked),
      ranks_(workplace.plant),
      boards_(workplace.plant) {}

std::string BesideRun::begin() const {
    if (form_ == AnswerForm::text) return "";
    if (options_.strength.is_any()) return boards_.begin();
    if (options_.rank) return ranks_.begin();
    return options_.alternatives.is_any() ? alternatives_.begin() : changes_.begin();
}

std::string BesideRun::end() const {
    if (form_ == AnswerForm::text) return "";
    if (options_.strength.is_any()) return boards_.end();
    if (options_.rank) return ranks_.end();
    return options_.alternatives.is_any() ? alternatives_.end() : changes_.end();
}

BesideRun::Answer BesideRun::answer(const orders::Request& request) {
    if (options_.strength.is_any()) return searched(request);
    if (options_.rank) return ranked(request);
    return options_.alternatives.is_any() ? alternatives(request) : changed(request);
}

BesideRun::Answer BesideRun::changed(const orders::Request& request) {
    const what_if_answers::WhatIf answer = what_if::compare(workplace_, request, options_.changes, asked_);
    const bool is_made =
        std::all_of(answer.quantities.begin(), answer.quantities.end(),
                    [](const what_if_answers::QuantityBeside& quantity) { return quantity.now.has_value(); });
    const ExitCode code = is_made ? ExitCode::done : ExitCode::refused;
    if (form_ == AnswerForm::json) return {changes_.add(answer), code};
    return {as_text(what_if_reports::what_if_report(workplace_.plant, answer)), code};
}

BesideRun::Answer BesideRun::alternatives(const orders::Request& request) {
    const what_if_answers::Alternatives answer =
        what_if::alternatives(workplace_, request, options_.alternatives, options_.changes, asked_);
    const ExitCode code = answer.are_complete() ? ExitCode::done : ExitCode::refused;
    if (form_ == AnswerForm::json) return {alternatives_.add(answer), code};
    return {as_text(what_if_reports::alternatives_report(workplace_.plant, answer)), code};
}

BesideRun::Answer BesideRun::ranked(const orders::Request& request) {
    const std::optional<double>& quantity = options_.rank->quantity;
    const what_if_answers::Rank answer = what_if::rank(workplace_, request, options_.changes, quantity, asked_);
    const bool is_made = std::all_of(answer.quantities.begin(), answer.quantities.end(),
                                     [](const what_if_answers::QuantityRank& item) { return item.price.has_value(); });
    const ExitCode code = is_made ? ExitCode::done : ExitCode::refused;
    if (form_ == AnswerForm::json) return {ranks_.add(answer), code};
    const auto length = quantity ? what_if_reports::RankLength::all : what_if_reports::RankLength::first;
    return {as_text(what_if_reports::rank_report(workplace_.plant, answer, length)), code};
}

BesideRun::Answer BesideRun::searched(const orders::Request& request) {
    const what_if_answers::BoardSearch answer =
        what_if::search_boards(workplace_, request, options_.strength, asked_.threads);
    const ExitCode code = answer.is_complete() ? ExitCode::done : ExitCode::refused;
    if (form_ == AnswerForm::json) return {boards_.add(answer), code};
    return {as_text(what_if_reports::board_search_report(workplace_.plant, answer)), code};
}

}  // namespace flutebook::cli
