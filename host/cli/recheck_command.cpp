#include "host/cli/recheck_command.hpp"

#include "host/answers/recheck_json.hpp"
#include "host/render/text_report.hpp"
#include "host/reports/recheck_report.hpp"
#include "host/services/quoting/recheck.hpp"
#include "host/services/quoting/saved_quote.hpp"

namespace flutebook::cli {

namespace {

ExitCode exit_code(const answers::Recheck& checked) {
    if (checked.reproduction.ends == answers::Reproduction::Ends::unfit) return ExitCode::unfit;
    if (checked.today.ends == answers::TodaysAnswer::Ends::model_at_fault) return ExitCode::unfit;
    return checked.differs() ? ExitCode::refused : ExitCode::done;
}

// The ledger is closed again before any plugin is tried.
ledger::SavedQuote read_quote(const std::string& ledger, const std::string& number) {
    return services::saved_quote(ledger::Store::open_for_reading(ledger), number);
}

}  // namespace

ExitCode run_quote_recheck(const std::string& plant, const std::string& ledger, const QuoteRecheckCommand& asked,
                           Output& output) {
    const answers::Recheck checked = services::recheck(read_quote(ledger, asked.quote), {plant, asked.threads});
    output.write(asked.form == OutputFormat::json ? answers::recheck_json(checked)
                                                  : render::to_text(reports::recheck_report(checked)) + "\n");
    complain(checked.reproduction.complaints);
    complain(checked.today.complaints);
    return exit_code(checked);
}

}  // namespace flutebook::cli
