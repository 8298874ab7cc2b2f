// `quote --ect`, `quote --bct`: the cheapest board that bears what is asked, in place of a quote.
#pragma once

#include <string>

#include "host/answers/board_search_answer.hpp"
#include "host/cli/command.hpp"
#include "host/cli/output.hpp"
#include "host/orders/request.hpp"
#include "host/workplace/workplace.hpp"

namespace flutebook::cli {

struct BoardSearchOptions {
    answers::AskedStrength strength;
    bool has_any_board = false;  // `--board any`, which says nothing without a strength
};

/// Adds the options to `quote`; `asked` must outlive it.
void add_board_search(Command& command, BoardSearchOptions& asked);

/// One run over requests. Not thread-safe.
class BoardSearchRun {
public:
    enum class Form { text, json };
    struct Answer {
        std::string text;
        ExitCode code;
    };

    BoardSearchRun(const workplace::Workplace& workplace, const answers::AskedStrength& asked, Form form,
                   unsigned threads);

    [[nodiscard]] std::string begin() const;
    /// Throws as services::search_boards().
    [[nodiscard]] Answer answer(const orders::Request& request);
    [[nodiscard]] std::string end() const;

private:
    const workplace::Workplace& workplace_;
    answers::AskedStrength asked_;
    Form form_;
    unsigned threads_;
    answers::BoardSearchStream document_;
};

}  // namespace flutebook::cli
