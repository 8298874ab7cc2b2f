#include "host/cli/recheck_command.hpp"

#include "host/cli/recheck_json.hpp"
#include "host/cli/recheck_text.hpp"
#include "host/cli/whole_answer.hpp"
#include "host/desk/recheck.hpp"
#include "host/desk/saved_quote.hpp"

namespace flutebook::cli {

namespace {

ExitCode exit_code(const desk::Recheck& checked) {
    if (checked.reproduction.ends == desk::Reproduction::Ends::unfit) return ExitCode::unfit;
    if (checked.today.ends == desk::TodaysAnswer::Ends::model_at_fault) return ExitCode::unfit;
    return checked.differs() ? ExitCode::refused : ExitCode::done;
}

// The ledger is closed again before any plugin is tried.
ledger::SavedQuote read_quote(const std::string& ledger, const std::string& number) {
    return desk::saved_quote(ledger::Store::open_for_reading(ledger), number);
}

}  // namespace

ExitCode run_quote_recheck(const std::string& plant, const std::string& ledger, const QuoteRecheckCommand& asked,
                           Output& output) {
    const desk::Recheck checked = desk::recheck(read_quote(ledger, asked.quote), {plant, asked.threads}, whole_answer);
    output.write(asked.form == Form::json ? recheck_json(checked) : recheck_text(checked));
    complain(checked.reproduction.complaints);
    complain(checked.today.complaints);
    return exit_code(checked);
}

}  // namespace flutebook::cli
