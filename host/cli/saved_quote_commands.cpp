// `quote show` and `quote recheck`: print a saved quote as it was, and cost it again today.
#include "host/answers/recheck_answer.hpp"
#include "host/cli/commands.hpp"
#include "host/cli/offer_file.hpp"
#include "host/command_line/whole_file.hpp"
#include "host/render/html_report.hpp"
#include "host/render/text_report.hpp"
#include "host/reports/kept_quote_report.hpp"
#include "host/reports/quote_list_report.hpp"
#include "host/reports/quote_report.hpp"
#include "host/reports/recheck_report.hpp"
#include "host/saved_quotes/drawn_quote.hpp"
#include "host/saved_quotes/find_quotes.hpp"
#include "host/saved_quotes/offered_quote.hpp"
#include "host/saved_quotes/recheck.hpp"
#include "host/saved_quotes/saved_quote.hpp"

namespace flutebook::cli {

namespace {

constexpr const char* quote_show_footer =
    R"(Prints the answer as it was when the quote was saved, even if files or plugins have changed since.
With --html the page also has its drawings as they were.

Exit code: 0 done; 1 there is no such quote, or the file cannot be written; 2 wrong usage.

Examples:
  flutebook --plant config/demo quote show Q000001
  flutebook quote show Q000001 --html Q000001.html
  flutebook quote show Q000001 --offer offer.html
  flutebook quote show Q000001 --json)";

constexpr const char* quote_recheck_footer =
    R"(Costs a saved quote again, twice: from the files that were saved with it and from today's, both
with today's plugins. So it shows whether the plant's files or the plugins made a difference. Prices
are those of the quote's day; with --date today's files give those of another day.

Exit code: 0 no figure differs; 1 a figure differs; 3 the plant's files or a plugin cannot be used,
or the saved files no longer fit the plugins.

Examples:
  flutebook --plant config/demo quote recheck Q000001
  flutebook quote recheck Q000001 --date today
  flutebook quote recheck Q000001 --json)";

struct SavedQuoteCommand {
    std::string quote;
    unsigned threads = usual_threads();
    std::optional<base::Date> date;
    std::string html_file, offer_file;  // empty: none
    bool is_replacing = false, is_json = false;
};

// Both commands have this argument.
std::shared_ptr<SavedQuoteCommand> add_quote_number(Command& command) {
    auto asked = std::make_shared<SavedQuoteCommand>();
    command.argument("QUOTE", "its number, like Q000001", read_line(asked->quote));
    command.refuse_words_of_parent("not for a saved quote");
    return asked;
}

Reader read_day_or_today(std::optional<base::Date>& value) {
    return [&value](const std::string& text) -> std::string {
        if (text != "today") return read_day(value)(text);
        value = RunContext::today();
        return {};
    };
}

void write_offer(const SavedQuoteCommand& asked, const ledger::SavedQuote& quote, const std::string& folder) {
    const saved_quotes::OfferedQuote offered = saved_quotes::offered_quote(quote, folder);
    OfferFile file(asked.offer_file, if_there(asked.is_replacing), offered.plant);
    file.add(offered.answer, quote.number);
    file.write();
}

// Of a quote of version 0 the text that was saved with it is printed.
std::string saved_text(const ledger::SavedQuote& quote) {
    const answers::QuoteDocument document = saved_quotes::saved_document(quote);
    if (document.version == 0) return saved_quotes::part_of(quote, "answer.txt");
    return render::to_text(reports::quote_report(document.plant, document.answer, document.asked)) + "\n";
}

std::string saved_page(const ledger::SavedQuote& quote, const answers::ListedQuote& listed, const std::string& folder) {
    const answers::QuoteDocument document = saved_quotes::drawn_document(quote, folder);
    const std::string printed = document.version == 0 ? saved_quotes::part_of(quote, "answer.txt") : "";
    return render::to_html({reports::kept_quote_report(document, printed, listed)});
}

ExitCode show_quote(const SavedQuoteCommand& asked, const RunContext& context) {
    const auto store = ledger::Store::open_for_reading(context.ledger);
    const ledger::SavedQuote quote = saved_quotes::saved_quote(store, asked.quote);
    const answers::ListedQuote listed = saved_quotes::listed_quote(store, asked.quote);
    const auto history = reports::quote_history_report(listed);
    if (!asked.html_file.empty())
        WholeFile(asked.html_file, if_there(asked.is_replacing)).write(saved_page(quote, listed, context.plant));
    if (!asked.offer_file.empty()) write_offer(asked, quote, context.plant);
    if (asked.is_json) context.output.write(saved_quotes::part_of(quote, "answer.json"));
    if (asked.is_json || !asked.html_file.empty() || !asked.offer_file.empty()) return ExitCode::done;
    context.output.write(saved_text(quote));
    if (history) context.output.write(render::to_text(*history) + "\n");
    return ExitCode::done;
}

// Closes the ledger before any plugin is tried.
ledger::SavedQuote read_saved_quote(const std::string& ledger, const std::string& number) {
    return saved_quotes::saved_quote(ledger::Store::open_for_reading(ledger), number);
}

// Done where no figure differs, refused where one does, unfit where the saved files no longer fit today's plugins or a
// model is at fault.
ExitCode recheck_exit_code(const answers::Recheck& checked) {
    if (checked.reproduction.ends == answers::Reproduction::Ends::unfit) return ExitCode::unfit;
    if (checked.today.ends == answers::TodaysAnswer::Ends::model_at_fault) return ExitCode::unfit;
    return checked.differs() ? ExitCode::refused : ExitCode::done;
}

ExitCode recheck_quote(const SavedQuoteCommand& asked, const RunContext& context) {
    const answers::Recheck checked = saved_quotes::recheck(read_saved_quote(context.ledger, asked.quote),
                                                           {context.plant, context.ledger, asked.threads, asked.date});
    context.output.write(asked.is_json ? answers::recheck_document(checked)
                                       : render::to_text(reports::recheck_report(checked)) + "\n");
    complain(checked.reproduction.complaints);
    complain(checked.today.complaints);
    return recheck_exit_code(checked);
}

}  // namespace

void add_quote_show(Command& quote) {
    Command& command = quote.add("show", "print a saved quote as it was", quote_show_footer);
    const auto asked = add_quote_number(command);
    command.json_flag(asked->is_json, "print its JSON document");
    command.option("--html", "FILE", html_help, read_page_file(asked->html_file));
    command.option("--offer", "FILE", offer_help, read_page_file(asked->offer_file));
    command.flag("--replace", replace_help, asked->is_replacing);
    command.run_with([asked](const RunContext& context) { return show_quote(*asked, context); });
}

void add_quote_recheck(Command& quote) {
    Command& command =
        quote.add("recheck", "cost a saved quote again today and list each difference", quote_recheck_footer);
    const auto asked = add_quote_number(command);
    command.option("--date", "DAY", "cost today's files at the prices of this day: YYYY-MM-DD, or today",
                   read_day_or_today(asked->date));
    command.option("--threads", "N", threads_help, read_threads(asked->threads));
    command.json_flag(asked->is_json);
    command.run_with([asked](const RunContext& context) { return recheck_quote(*asked, context); });
}

}  // namespace flutebook::cli
