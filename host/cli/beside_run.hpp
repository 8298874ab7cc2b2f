// Answers requests beside something else, as text or as one document: with other numbers, on other boards, at
// other margins or prices, with each number that moves its price, or on the cheapest board of a strength.
#pragma once

#include <string>

#include "host/answers/quote_answer.hpp"
#include "host/cli/beside_options.hpp"
#include "host/command_line/output.hpp"
#include "host/what_if_answers/alternatives_answer.hpp"
#include "host/what_if_answers/board_search_answer.hpp"
#include "host/what_if_answers/rank_answer.hpp"
#include "host/what_if_answers/what_if_answer.hpp"
#include "host/workplace/workplace.hpp"

namespace flutebook::cli {

/// How the answers are written.
enum class AnswerForm { text, json };

class BesideRun {
public:
    /// All must outlive it.
    BesideRun(const workplace::Workplace& workplace, const BesideOptions& options, const answers::QuoteOptions& asked,
              AnswerForm form);

    /// What is written before the first answer, of one request, and behind the last.
    [[nodiscard]] std::string begin() const;
    [[nodiscard]] std::string end() const;

    struct Answer {
        std::string text;
        ExitCode code = ExitCode::done;
    };
    /// Throws InputError and ModelError, of this request.
    [[nodiscard]] Answer answer(const orders::Request& request);

private:
    [[nodiscard]] Answer changed(const orders::Request& request);
    [[nodiscard]] Answer alternatives(const orders::Request& request);
    [[nodiscard]] Answer ranked(const orders::Request& request);
    [[nodiscard]] Answer searched(const orders::Request& request);

    const workplace::Workplace& workplace_;
    const BesideOptions& options_;
    const answers::QuoteOptions& asked_;
    AnswerForm form_;
    // The one that is asked for is written.
    what_if_answers::WhatIfStream changes_;
    what_if_answers::AlternativesStream alternatives_;
    what_if_answers::RankStream ranks_;
    what_if_answers::BoardSearchStream boards_;
};

}  // namespace flutebook::cli
