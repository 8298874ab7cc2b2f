#include "host/beside/answer.hpp"

#include <algorithm>

#include "host/what_if/board_search.hpp"
#include "host/what_if_reports/alternatives_report.hpp"
#include "host/what_if_reports/board_search_report.hpp"
#include "host/what_if_reports/rank_report.hpp"
#include "host/what_if_reports/what_if_report.hpp"

namespace flutebook::beside {

namespace {

using what_if_answers::Alternatives;
using what_if_answers::BoardSearch;
using what_if_answers::Rank;
using what_if_answers::WhatIf;

std::vector<std::string> changes_as_written(const Asked& asked) {
    std::vector<std::string> result;
    for (const what_if::NumberChange& change : asked.changes) result.push_back(change.asked);
    return result;
}

struct Completeness {
    bool operator()(const WhatIf& answer) const {
        return std::all_of(answer.quantities.begin(), answer.quantities.end(),
                           [](const what_if_answers::QuantityBeside& quantity) { return quantity.now.has_value(); });
    }
    bool operator()(const Alternatives& answer) const { return answer.are_complete(); }
    bool operator()(const Rank& answer) const {
        return std::all_of(answer.quantities.begin(), answer.quantities.end(),
                           [](const what_if_answers::QuantityRank& item) { return item.price.has_value(); });
    }
    bool operator()(const BoardSearch& answer) const { return answer.is_complete(); }
};

struct ReportWriter {
    const plant::Plant& plant;
    what_if_reports::RankLength length;

    render::Report operator()(const WhatIf& answer) const { return what_if_reports::what_if_report(plant, answer); }
    render::Report operator()(const Alternatives& answer) const {
        return what_if_reports::alternatives_report(plant, answer);
    }
    render::Report operator()(const Rank& answer) const { return what_if_reports::rank_report(plant, answer, length); }
    render::Report operator()(const BoardSearch& answer) const {
        return what_if_reports::board_search_report(plant, answer);
    }
};

}  // namespace

Answer answer(const workplace::Workplace& workplace, const orders::Request& request, const Asked& asked,
              const answers::QuoteOptions& options) {
    if (asked.strength.is_any()) return what_if::search_boards(workplace, request, asked.strength, options.threads);
    if (asked.rank) return what_if::rank(workplace, request, asked.changes, asked.rank->quantity, options);
    if (asked.alternatives.is_any())
        return what_if::alternatives(workplace, request, asked.alternatives, asked.changes, options);
    return what_if::compare(workplace, request, asked.changes, options);
}

bool is_complete(const Answer& answer) {
    return std::visit(Completeness{}, answer);
}

render::Report report(const plant::Plant& plant, const Answer& answer, const Asked& asked) {
    using what_if_reports::RankLength;
    const bool is_one_ranked = asked.rank && asked.rank->quantity;
    return std::visit(ReportWriter{plant, is_one_ranked ? RankLength::all : RankLength::first}, answer);
}

AnswerStream::AnswerStream(const plant::Plant& plant, const Asked& asked, const answers::QuoteOptions& options)
    : asked_(asked),
      changes_(plant, changes_as_written(asked)),
      alternatives_(plant, options),
      ranks_(plant),
      boards_(plant) {}

std::string AnswerStream::begin() const {
    if (asked_.strength.is_any()) return boards_.begin();
    if (asked_.rank) return ranks_.begin();
    return asked_.alternatives.is_any() ? alternatives_.begin() : changes_.begin();
}

std::string AnswerStream::end() const {
    if (asked_.strength.is_any()) return boards_.end();
    if (asked_.rank) return ranks_.end();
    return asked_.alternatives.is_any() ? alternatives_.end() : changes_.end();
}

std::string AnswerStream::add(const Answer& answer) {
    if (const auto* boards = std::get_if<BoardSearch>(&answer)) return boards_.add(*boards);
    if (const auto* ranks = std::get_if<Rank>(&answer)) return ranks_.add(*ranks);
    if (const auto* alternatives = std::get_if<Alternatives>(&answer)) return alternatives_.add(*alternatives);
    return changes_.add(std::get<WhatIf>(answer));
}

}  // namespace flutebook::beside
