// One request answered in several variants: on other boards, at other margins, at prices that are given. Plain values,
// and the document that `quote --board … --margin … --price … --json` writes.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/answers/json_text.hpp"
#include "host/answers/quote_answer.hpp"
#include "host/plant/plant.hpp"
#include "host/what_if_answers/changed_number.hpp"

namespace flutebook::what_if_answers {

/// What differs from the request, and what that comes to.
struct Alternative {
    std::optional<std::string> board;              // its code; nothing: the request's own
    std::optional<double> margin;                  // a share of the price; nothing: the request's own
    std::optional<Money> price;                    // a thousand, to which the margins are found
    std::optional<answers::RequestAnswer> answer;  // nothing where it has none
    std::vector<std::string> complaints;           // then why
    std::vector<double> margins;                   // of the answer, by quantity
};

struct Alternatives {
    orders::Request request;
    std::vector<Alternative> items;
    std::vector<ChangedNumber> changed = {};  // of all of them

    /// Whether each could be answered at every quantity.
    [[nodiscard]] bool are_complete() const;
};

/// The document of many requests, like QuoteStream:
///
/// {"answer": "quote-alternatives", "answer_version", "plant", "currency", "requests": [R...]}
/// R = {"request", "changed" (what --with changed, as in the document of --with; only where it was given),
///  "alternatives": [A...]}
/// A = {"board", "margin", "price_per_thousand" (each null where the request's own counts), "margins": [...] (by
///   quantity), "complaints": [text...], "quotes", "pieces", "warnings", "page" as in the document of a quote; null
///   where there is no answer, which the complaints explain}
class AlternativesStream {
public:
    /// `plant` must outlive it.
    AlternativesStream(const plant::Plant& plant, answers::QuoteOptions asked);

    [[nodiscard]] const std::string& begin() const { return list_.begin(); }
    [[nodiscard]] std::string add(const Alternatives& answer);
    [[nodiscard]] std::string end() const { return list_.end(); }

private:
    const plant::Plant& plant_;
    answers::QuoteOptions asked_;
    answers::JsonListStream list_;
};

}  // namespace flutebook::what_if_answers
