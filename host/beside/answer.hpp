// The answer to a comparison: as a report, and as the document that both faces write.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/beside/asked.hpp"
#include "host/render/report.hpp"
#include "host/what_if_answers/alternatives_answer.hpp"
#include "host/what_if_answers/board_search_answer.hpp"
#include "host/what_if_answers/rank_answer.hpp"
#include "host/what_if_answers/what_if_answer.hpp"
#include "host/workplace/workplace.hpp"

namespace flutebook::beside {

using Answer = std::variant<what_if_answers::WhatIf, what_if_answers::Alternatives, what_if_answers::Rank,
                            what_if_answers::BoardSearch>;

/// `asked` asks for something else than a quote. Throws InputError and ModelError, of this request.
[[nodiscard]] Answer answer(const workplace::Workplace& workplace, const orders::Request& request, const Asked& asked,
                            const answers::QuoteOptions& options);

/// Whether everything that was asked for can be made.
[[nodiscard]] bool is_complete(const Answer& answer);

/// Of numbers that move a price, the first where every quantity is ranked, and all where one is.
[[nodiscard]] render::Report report(const plant::Plant& plant, const Answer& answer, const Asked& asked);

/// One document of the answers to many requests, all asked alike.
class AnswerStream {
public:
    /// The plant and what is asked must outlive it.
    AnswerStream(const plant::Plant& plant, const Asked& asked, const answers::QuoteOptions& options);

    [[nodiscard]] std::string begin() const;
    [[nodiscard]] std::string add(const Answer& answer);
    [[nodiscard]] std::string end() const;

private:
    const Asked& asked_;
    // The one that is asked for is written.
    what_if_answers::WhatIfStream changes_;
    what_if_answers::AlternativesStream alternatives_;
    what_if_answers::RankStream ranks_;
    what_if_answers::BoardSearchStream boards_;
};

}  // namespace flutebook::beside
