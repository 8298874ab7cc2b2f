// `quote copy`: writes a request file from a saved quote.
#include <fmt/format.h>

#include "host/answers/quote_list_answer.hpp"
#include "host/cli/commands.hpp"
#include "host/command_line/whole_file.hpp"
#include "host/saved_quotes/copy_quote.hpp"
#include "host/saved_quotes/saved_quote.hpp"

namespace flutebook::cli {

namespace {

constexpr const char* quote_copy_footer =
    R"(Writes the request of a saved quote as a new request with its own number, today's date, and the key
`copied_from`, which links quotes of the new request to the old quote.

Without --as the new number is the old one followed by -2, or the first such number that no saved
quote has. An existing file is replaced only with --replace.

Exit code: 0 done; 1 there is no such quote, or the file cannot be written; 2 wrong usage.

Examples:
  flutebook quote copy Q000001
  flutebook quote copy Q000001 -o R-1042.yaml --as R-1042
  flutebook quote copy Q000001 -o again.yaml --date 2026-12-01)";

struct QuoteCopyCommand {
    std::string quote, file;
    std::optional<std::string> number;
    std::optional<base::Date> date;
    bool is_replacing = false, is_json = false;
};

ExitCode copy_quote(const QuoteCopyCommand& asked, const RunContext& context) {
    const auto store = ledger::Store::open_for_reading(context.ledger);
    const auto copied = saved_quotes::copy_request(store, saved_quotes::saved_quote(store, asked.quote),
                                                   {asked.number, asked.date.value_or(RunContext::today())});
    if (!asked.file.empty()) WholeFile(asked.file, if_there(asked.is_replacing)).write(copied.text);
    if (asked.is_json)
        context.output.write(answers::copy_document({asked.quote, copied.number, asked.file, copied.text}));
    else if (asked.file.empty())
        context.output.write(copied.text);
    else
        context.output.write(fmt::format("{}: request {}, copied from {}\n", asked.file, copied.number, asked.quote));
    return ExitCode::done;
}

}  // namespace

void add_quote_copy(Command& quote) {
    Command& command = quote.add("copy", "write a new request from a saved quote", quote_copy_footer);
    const auto asked = std::make_shared<QuoteCopyCommand>();
    command.argument("QUOTE", "its number, like Q000001", read_line(asked->quote));
    command.option("-o", "FILE", "write the request to this file instead of standard output", read_text(asked->file));
    command.option("--as", "NUMBER", "the new request's number", read_line(asked->number));
    command.option("--date", "YYYY-MM-DD", "the new request's date; today where it is not given",
                   read_day(asked->date));
    command.flag("--replace", replace_help, asked->is_replacing);
    command.json_flag(asked->is_json);
    command.refuse_words_of_parent("not for a saved quote");
    command.run_with([asked](const RunContext& context) { return copy_quote(*asked, context); });
}

}  // namespace flutebook::cli
