// `quote show` and `quote recheck`: a saved quote as it was, and worked out again today.
#include "host/answers/recheck_answer.hpp"
#include "host/cli/commands.hpp"
#include "host/render/text_report.hpp"
#include "host/reports/quote_report.hpp"
#include "host/reports/recheck_report.hpp"
#include "host/services/quoting/recheck.hpp"
#include "host/services/quoting/saved_quote.hpp"

namespace flutebook::cli {

namespace {

constexpr const char* quote_show_footer =
    R"(Prints what was answered on the day the quote was saved, whatever has changed since.

Examples:
  flutebook --plant config/demo quote show Q000001
  flutebook quote show Q000001 --json)";

constexpr const char* quote_recheck_footer =
    R"(Works a saved quote out again, twice: from the files that were saved with it and from today's, both
by today's plugins. So it is told whether the plant's files or the plugins made a difference. Prices
of paper are those of the quote's own day.

Exit code: 0 nothing that was answered differs; 1 something does; 3 the plant's files or a plugin
are not fit, or the saved files no longer fit the plugins.

Examples:
  flutebook --plant config/demo quote recheck Q000001
  flutebook quote recheck Q000001 --json)";

struct SavedQuoteCommand {
    std::string quote;
    unsigned threads = usual_threads();
    bool is_json = false;
};

// Both commands begin so.
std::shared_ptr<SavedQuoteCommand> add_quote_number(Command& command) {
    auto asked = std::make_shared<SavedQuoteCommand>();
    command.argument("QUOTE", "its number, like Q000001", read_text(asked->quote));
    command.refuse_words_of_parent("not for a saved quote");
    return asked;
}

// A quote of version 0 is shown by the text that was saved with it.
ExitCode show_quote(const SavedQuoteCommand& asked, const RunContext& context) {
    const auto store = ledger::Store::open_for_reading(context.ledger);
    const ledger::SavedQuote quote = services::saved_quote(store, asked.quote);
    const answers::QuoteDocument document = services::saved_document(quote);
    Output& output = context.output;
    if (asked.is_json)
        output.write(services::part_of(quote, "answer.json"));
    else if (document.version == 0)
        output.write(services::part_of(quote, "answer.txt"));
    else
        output.write(render::to_text(reports::quote_report(document.plant, document.answer, document.asked)) + "\n");
    return ExitCode::done;
}

// The ledger is closed again before any plugin is tried.
ledger::SavedQuote read_saved_quote(const std::string& ledger, const std::string& number) {
    return services::saved_quote(ledger::Store::open_for_reading(ledger), number);
}

// Done where nothing that was answered differs, refused where something does, unfit where the saved files no longer fit
// today's plugins, or a model is at fault.
ExitCode recheck_exit_code(const answers::Recheck& checked) {
    if (checked.reproduction.ends == answers::Reproduction::Ends::unfit) return ExitCode::unfit;
    if (checked.today.ends == answers::TodaysAnswer::Ends::model_at_fault) return ExitCode::unfit;
    return checked.differs() ? ExitCode::refused : ExitCode::done;
}

ExitCode recheck_quote(const SavedQuoteCommand& asked, const RunContext& context) {
    const answers::Recheck checked =
        services::recheck(read_saved_quote(context.ledger, asked.quote), {context.plant, asked.threads});
    context.output.write(asked.is_json ? answers::recheck_document(checked)
                                       : render::to_text(reports::recheck_report(checked)) + "\n");
    complain(checked.reproduction.complaints);
    complain(checked.today.complaints);
    return recheck_exit_code(checked);
}

}  // namespace

void add_quote_show(Command& quote) {
    Command& command = quote.add("show", "a saved quote as it was", quote_show_footer);
    const auto asked = add_quote_number(command);
    command.json_flag(asked->is_json, "as it was answered in JSON");
    command.run_with([asked](const RunContext& context) { return show_quote(*asked, context); });
}

void add_quote_recheck(Command& quote) {
    Command& command =
        quote.add("recheck", "a saved quote worked out again today, each difference named", quote_recheck_footer);
    const auto asked = add_quote_number(command);
    command.option("--threads", "N", threads_help, read_threads(asked->threads));
    command.json_flag(asked->is_json);
    command.run_with([asked](const RunContext& context) { return recheck_quote(*asked, context); });
}

}  // namespace flutebook::cli
