// `quote`: costs request files; writes cost sheets, a page or JSON.
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "host/cli/commands.hpp"
#include "host/cli/list_command.hpp"
#include "host/cli/offer_file.hpp"
#include "host/cli/open_workplace.hpp"
#include "host/cli/quote_run.hpp"
#include "host/cli/request_keys_help.hpp"

namespace flutebook::cli {

namespace {

constexpr const char* quote_footer =
    R"(Costs each request at each of its quantities, made the cheapest way on this plant. One request is
answered by a table of prices; --sheet adds the full cost sheet of each quantity, or of the one that
it names. Several requests are answered by one table with a line for each quantity. Text is as wide
as the terminal, or as the variable COLUMNS says, up to 100 columns.

Exit code: 0 done; 1 a request was refused or a quantity cannot be made, everything else is in the
answer; 2 wrong usage; 3 the plant's files or a plugin cannot be used.

Examples:
  flutebook --plant config/demo quote config/demo/requests/R-1001-everyday-box.yaml
  flutebook quote R-1001.yaml --sheet 5000
  flutebook quote requests/*.yaml --json > prices.json
  flutebook quote "0201 400x300x250 B-140 500 1000 5000 2c 18%"
  flutebook quote R-1001.yaml --explain energy.heat
  flutebook quote R-1001.yaml --explain price@500
  flutebook quote R-1001.yaml --date 2026-12-01
  flutebook quote R-1001.yaml --html R-1001.html
  flutebook quote R-1001.yaml --save --offer offer.html --xlsx R-1001.xlsx
  flutebook quote R-1001.yaml --save --approve "A. Example"
  flutebook quote enquiry.csv -o prices.csv
  flutebook quote enquiry.xlsx -o prices.xlsx --date 2026-12-01
  flutebook quote enquiry.csv --json > prices.json

A list (.csv, .xlsx: its first sheet) has one row for each item, under a header with these columns:
request, style, length, width, board, quantity, margin, and where needed height, area (of an
outline), customer, date (else today), colours, route (PR1 > DC1), flutes, a style's measures,
extras as MODEL.SETTING, price (the old price per thousand) and price_date (its day). If the header
has an unknown column, the message lists the known ones. The answer has the rows of the list in
their order, with the new price and its parts by cost class. Where an old price is given it also has
the difference, and, if its day is known, the part that each class explains. A refused row has its
reason.)";

// A quantity as the request may have it, or nothing for all.
Reader read_sheets(reports::ShownSheets& sheets) {
    return [&sheets](const std::string& text) {
        if (text.empty()) {
            sheets = reports::ShownSheets::all();
            return std::string();
        }
        std::int64_t quantity = 0;
        std::string wrong = read_whole_number({"quantity", 1}, quantity)(text);
        if (wrong.empty()) sheets = reports::ShownSheets::of(static_cast<double>(quantity));
        return wrong;
    };
}

bool has_list(const QuoteCommand& asked) {
    return !asked.list_file.empty() || std::any_of(asked.files.begin(), asked.files.end(), is_list_file);
}

ExitCode run_list(const QuoteCommand& asked, const RunContext& context) {
    const bool is_alone = asked.files.size() == 1 && is_list_file(asked.files.front());
    if (is_alone && !asked.explain && !asked.provided && !asked.is_saved && asked.html_file.empty() &&
        asked.offer_file.empty() && asked.workbook_file.empty())
        return quote_list(
            {asked.files.front(), asked.list_file, asked.is_replacing, asked.is_json, asked.threads, asked.date},
            context);
    complain({is_alone ? "quote: a list takes -o, --json, --date, --threads and --replace alone; leave out the others"
                       : "quote: -o is for one list, and a list is quoted alone: found several files or none that "
                         "ends in .csv or .xlsx; name one list"});
    return ExitCode::misused;
}

// Why options cannot stand together; empty where they can.
std::string wrong_together(const QuoteCommand& asked) {
    const std::string name = beside::first_name(asked.beside, beside::option_names);
    if (asked.approver && !asked.is_saved)
        return "--approve: is for what is kept: found it without --save; add --save, or leave it out";
    if (!asked.workbook_file.empty() && !has_list(asked) && asked.files.size() != 1)
        return fmt::format("quote: --xlsx is for one request: found {}; name one, or take a list with -o",
                           asked.files.size());
    if (!name.empty() && asked.is_saved)
        return fmt::format(
            "--save: only the request and the plant as their files are can be saved: found {}; leave "
            "out one of the two, or change the files",
            name);
    if (!name.empty() && has_list(asked))
        return fmt::format("{}: is for requests: found a list; quote its items one by one", name);
    if (asked.beside.is_any() &&
        (asked.explain || asked.provided || asked.sheets.is_any() || !asked.html_file.empty() ||
         !asked.offer_file.empty() || !asked.workbook_file.empty()))
        return fmt::format(
            "{}: takes --json, --date, --threads and a way alone: found --sheet, --explain, --provided "
            "or a file; leave it out",
            name);
    return beside::wrong_together(asked.beside, beside::option_names);
}

ExitCode run_quote(const QuoteCommand& asked, const RunContext& context) {
    const std::string wrong = wrong_together(asked);
    if (!wrong.empty()) {
        complain({wrong});
        return ExitCode::misused;
    }
    if (has_list(asked)) return run_list(asked, context);
    return run_quotes(open_workplace(context), asked, context);
}

}  // namespace

void add_quote(Command& program) {
    Command& command = program.add("quote", "cost requests, each at each of its quantities",
                                   quote_footer + std::string(beside_footer) + request_keys_help());
    const auto asked = std::make_shared<QuoteCommand>();
    command.arguments("WHAT", "request files, or an enquiry in quotes", asked->files,
                      Command::Presence::required_without_subcommand);
    command.option_with_optional_number("--sheet", "[QUANTITY]", "print the full cost sheets, or that of one quantity",
                                        read_sheets(asked->sheets));
    command.option("--explain", "FIGURE[@QUANTITY]",
                   "show what a figure is computed from: a line, price, a mass, a length", read_line(asked->explain));
    command.option("--provided", "MODEL", "with --json, add the numbers that this model provides to others",
                   read_line(asked->provided));
    command.option("--date", "YYYY-MM-DD", "use the prices of this day, not of the request's date",
                   read_day(asked->date));
    command.option("--threads", "N", threads_help, read_threads(asked->threads));
    command.flag("--save", "store each quote in the ledger with everything it was computed from", asked->is_saved);
    command.option("--approve", "NAME", "with --save: who approves a profit below the limit",
                   read_line(asked->approver));
    command.json_flag(asked->is_json);
    command.option("--html", "FILE", html_help, read_page_file(asked->html_file));
    command.option("--offer", "FILE", offer_help, read_page_file(asked->offer_file));
    command.option("--xlsx", "FILE", "write one request as a workbook that calculates, .xlsx",
                   read_workbook_file(asked->workbook_file));
    command.option("-o", "FILE", "write the answer of a list to this file, .csv or .xlsx",
                   read_list_file(asked->list_file));
    command.flag("--replace", replace_help, asked->is_replacing);
    add_beside_options(command, asked->beside);
    command.run_with([asked](const RunContext& context) { return run_quote(*asked, context); });
    add_quote_list(command);
    add_quote_show(command);
    add_quote_copy(command);
    add_quote_mark(command);
    add_quote_recheck(command);
}

}  // namespace flutebook::cli
