#include "host/cli/board_search.hpp"

#include <fmt/format.h>

#include <optional>

#include "host/base/decimal.hpp"
#include "host/base/quoted_text.hpp"
#include "host/cli/option_readers.hpp"
#include "host/render/text_report.hpp"
#include "host/reports/board_search_report.hpp"
#include "host/services/boards/board_search.hpp"

namespace flutebook::cli {

namespace {

Reader read_strength(std::optional<double>& value) {
    return [&value](const std::string& text) {
        const auto number = base::read_decimal(text);
        if (!number || number->mark == ',' || !(number->value > 0))
            return fmt::format("takes a number above 0: found {}", base::shown(text));
        value = number->value;
        return std::string();
    };
}

// The word alone; a board's code would be a quote on that board.
Reader read_any_board(bool& has_any_board) {
    return [&has_any_board](const std::string& text) {
        has_any_board = text == "any";
        return has_any_board ? std::string() : fmt::format("takes the word any: found {}", base::shown(text));
    };
}

}  // namespace

void add_board_search(Command& command, BoardSearchOptions& asked) {
    command.option("--board", "any", "with --ect or --bct, try every board; the same without it",
                   read_any_board(asked.has_any_board));
    command.option("--ect", "KN/M", "find the cheapest board with this edge crush resistance",
                   read_strength(asked.strength.ect_kn_m));
    command.option("--bct", "KN", "find the cheapest board whose box is estimated to bear this from above",
                   read_strength(asked.strength.bct_kn));
}

BoardSearchRun::BoardSearchRun(const workplace::Workplace& workplace, const answers::AskedStrength& asked, Form form,
                               unsigned threads)
    : workplace_(workplace), asked_(asked), form_(form), threads_(threads), document_(workplace.plant) {}

std::string BoardSearchRun::begin() const {
    return form_ == Form::json ? document_.begin() : "";
}

std::string BoardSearchRun::end() const {
    return form_ == Form::json ? document_.end() : "";
}

BoardSearchRun::Answer BoardSearchRun::answer(const orders::Request& request) {
    const answers::BoardSearch search = services::search_boards(workplace_, request, asked_, threads_);
    const ExitCode code = search.is_complete() ? ExitCode::done : ExitCode::refused;
    if (form_ == Form::json) return {document_.add(search), code};
    return {render::to_text(reports::board_search_report(workplace_.plant, search), text_columns()) + "\n", code};
}

}  // namespace flutebook::cli
