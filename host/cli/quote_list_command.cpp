// `quote list` and `quote mark`: find saved quotes, and mark one as won, lost or open.
#include <fmt/format.h>

#include "host/base/quoted_text.hpp"
#include "host/cli/commands.hpp"
#include "host/command_line/search_readers.hpp"
#include "host/plant/plant.hpp"
#include "host/render/text_report.hpp"
#include "host/reports/quote_list_report.hpp"
#include "host/saved_quotes/find_quotes.hpp"
#include "host/services/clock_warning.hpp"
#include "ledger/reading/entries.hpp"

namespace flutebook::cli {

namespace {

constexpr const char* quote_list_footer =
    R"(Lists saved quotes, the newest first: what each was for, its price at the first and the last
quantity, and its state. A quote must match every option. --customer finds a part of a name. Sizes
are inside sizes in mm, or in inches followed by `in`; two lengths leave the height open.

The first search also indexes quotes that an older version saved.

Exit code: 0 done, also where none matches; 2 wrong usage; 3 the ledger cannot be used.

Examples:
  flutebook quote list
  flutebook quote list --customer ashlar --state open
  flutebook quote list --size 400x300x250 --within 5% --board B-140
  flutebook quote list --size 16x12x10in --within 0.25in
  flutebook quote list --from 2026-10-01 --to 2026-10-31 --limit 100 --json)";

constexpr const char* quote_mark_footer =
    R"(Marks a quote as won, lost, or open again. Earlier marks are never changed; `quote show` shows them.
A lost quote needs a reason.

Exit code: 0 done; 1 there is no such quote, or a lost one has no reason; 2 wrong usage.

Examples:
  flutebook quote mark Q000001 won
  flutebook quote mark Q000001 lost --why "8 % above the price of their last lot")";

struct QuoteListCommand {
    saved_quotes::FindOptions find;
    std::int64_t limit = 20;
    bool is_json = false;
};

struct QuoteMarkCommand {
    std::string quote, state, why;
    bool is_json = false;
};

ExitCode list_quotes(const QuoteListCommand& asked, const RunContext& context) {
    const plant::Plant plant = plant::read_plant(context.plant);
    saved_quotes::record_older_quotes(context.ledger, context.person());
    const auto store = ledger::Store::open_for_reading(context.ledger);
    const answers::QuoteList list = saved_quotes::find_quotes(store, asked.find);
    context.output.write(asked.is_json ? answers::quote_list_document(list)
                                       : render::to_text(reports::quote_list_report(plant.units, list)));
    return ExitCode::done;
}

ExitCode mark_saved_quote(const QuoteMarkCommand& asked, const RunContext& context) {
    auto store = ledger::Store::open_for_writing(context.ledger, ledger::IfMissing::refuse);
    const answers::QuoteMark mark =
        saved_quotes::mark_quote(store, asked.quote, asked.state, asked.why, context.person());
    const std::string head = ledger::head(store)->hash;
    context.output.acknowledge(fmt::format("quote {} marked {}; head {}", asked.quote, asked.state, head));
    warn(services::clock_warnings(store));
    context.output.write(asked.is_json ? answers::mark_document(asked.quote, mark, head)
                                       : fmt::format("quote {} marked {}\n", asked.quote, asked.state));
    return ExitCode::done;
}

}  // namespace

void add_quote_list(Command& quote) {
    Command& command = quote.add("list", "find saved quotes", quote_list_footer);
    const auto asked = std::make_shared<QuoteListCommand>();
    auto& find = asked->find;
    find.size.emplace();
    command.option("--customer", "NAME", "a part of the customer's name", read_line(find.customer));
    command.option("--request", "NUMBER", "the request's number: all of its revisions", read_line(find.request));
    command.option("--board", "CODE", "the board", read_line(find.board));
    command.option("--style", "CODE", "the style", read_line(find.style));
    command.option("--size", "LxWxH", "the inside size, in mm, or in inches: 16x12x10in",
                   read_searched_size(find.size->lengths_mm));
    command.option("--within", "TOLERANCE", "how far each length may be from --size: 5%, 10 (mm), 0.5in",
                   read_tolerance(find.size->within_share, find.size->within_mm));
    command.option("--from", "YYYY-MM-DD", "saved on this day (UTC) or later", read_day(find.from));
    command.option("--to", "YYYY-MM-DD", "saved on this day (UTC) or before", read_day(find.to));
    command.option("--state", "STATE", "what became of it: won, lost or open", read_state(find.state));
    command.option("--before", "QUOTE", "saved before this quote: the next page", read_line(find.before));
    command.option("--limit", "N", "how many are shown; 20 where it is not given",
                   read_whole_number({"a number of quotes", 1, 100000}, asked->limit));
    command.json_flag(asked->is_json);
    command.refuse_words_of_parent("not for a list of saved quotes");
    command.run_with([asked](const RunContext& context) {
        asked->find.limit = static_cast<std::size_t>(asked->limit);
        const auto& size = *asked->find.size;
        if (size.lengths_mm.empty() && (size.within_share > 0 || size.within_mm > 0)) {
            complain({"flutebook quote list: --within: goes with --size; see `flutebook quote list --help`"});
            return ExitCode::misused;
        }
        if (size.lengths_mm.empty()) asked->find.size.reset();
        return list_quotes(*asked, context);
    });
}

void add_quote_mark(Command& quote) {
    Command& command = quote.add("mark", "say what became of a saved quote", quote_mark_footer);
    const auto asked = std::make_shared<QuoteMarkCommand>();
    command.argument("QUOTE", "its number, like Q000001", read_line(asked->quote));
    command.argument("STATE", "won, lost or open", [asked](const std::string& text) -> std::string {
        std::optional<std::string> state;
        auto fault = read_state(state)(text);
        asked->state = state.value_or("");
        return fault;
    });
    command.option("--why", "TEXT", "the reason; a lost quote needs one", read_line(asked->why));
    command.json_flag(asked->is_json);
    command.refuse_words_of_parent("not for a saved quote");
    command.run_with([asked](const RunContext& context) { return mark_saved_quote(*asked, context); });
}

}  // namespace flutebook::cli
