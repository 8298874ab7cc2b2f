// What stands under each command's help: how it ends, and commands to copy.
#pragma once

namespace flutebook::cli::examples {

inline constexpr const char* of_quote =
    R"(What it costs to make each request at each of its quantities: the price ladder, then a cost sheet
for each quantity, made the cheapest way that the plant has.

Exit code: 0 done; 1 a request was refused or a quantity cannot be made, everything else is in the
answer; 2 wrong usage; 3 the plant's files or a plugin are not fit.

Examples:
  flutebook --plant config/demo quote config/demo/requests/R-1001-everyday-box.yaml
  flutebook quote requests/*.yaml --json > prices.json
  flutebook quote R-1001.yaml --explain energy.heat
  flutebook quote R-1001.yaml --date 2026-12-01
  flutebook quote R-1001.yaml --html R-1001.html
  flutebook quote R-1001.yaml --save)";

inline constexpr const char* of_show =
    R"(Prints what was answered on the day the quote was saved, whatever has changed since.

Examples:
  flutebook --plant config/demo quote show Q000001
  flutebook quote show Q000001 --json)";

inline constexpr const char* of_recheck =
    R"(Works a saved quote out again, twice: from the files that were saved with it and from today's, both
by today's plugins. So it is told whether the plant's files or the plugins made a difference. Prices
of paper are those of the quote's own day.

Exit code: 0 nothing that was answered differs; 1 something does; 3 the plant's files or a plugin
are not fit, or the saved files no longer fit the plugins.

Examples:
  flutebook --plant config/demo quote recheck Q000001
  flutebook quote recheck Q000001 --json)";

inline constexpr const char* of_order =
    R"(Fixes the layout and the allowances that the order's production is measured against. Without --as
the order is called after its quote and quantity, Q000001-500.

Examples:
  flutebook --plant config/demo order Q000001 500 --as 26-0417
  flutebook order Q000002 20000 --json)";

inline constexpr const char* of_order_cost =
    R"(What an order really cost beside its quote, once its production is posted, and why: other boxes than
were quoted (volume), what the converters lost (yield), what the corrugator used (usage), and what
papers cost on the days they ran (price).

Exit code: 0 done; 1 refused: no such order, or something of it is not posted yet; 2 wrong usage;
3 the plant's files or a plugin are not fit.

Examples:
  flutebook --plant config/demo order cost 26-0417
  flutebook order cost 26-0417 --json)";

inline constexpr const char* of_list = R"(Examples:
  flutebook --plant config/demo plugin list
  flutebook plugin list --json)";

inline constexpr const char* of_graph =
    R"(Models stand in the order they are evaluated. Each name is followed by its unit, and by `step` or
`ply` where there is one number for each.

Examples:
  flutebook --plant config/demo plugin graph
  flutebook plugin graph --json
  flutebook plugin graph --svg > models.svg)";

inline constexpr const char* of_describe =
    R"(A plugin's own account of itself, read from its file: no plant is needed.

Examples:
  flutebook plugin describe plugins/varnish.so
  flutebook plugin describe plugins/varnish.so --yaml >> plugins.yaml)";

inline constexpr const char* of_check =
    R"(Loads the plugin in a process apart and tries it by every rule: its file, what loading it changes,
its description, its settings, what it makes of made orders, and whether everything it declares is
true. No plant is needed. A broken rule comes with the command that shows it again.

Exit code: 0 every rule holds; 1 a rule is broken; 2 wrong usage; 3 there is no such file.

Examples:
  flutebook plugin check varnish/build/varnish.so
  flutebook plugin check plugins/varnish.so --seed 7 --orders 20000
  flutebook plugin check plugins/varnish.so --junit > varnish.xml)";

inline constexpr const char* of_facts =
    R"(What a model may need besides the numbers of other models: names, units and meanings. Where a plant
prefers a model for a replaceable one, that model's number is taken instead.

Examples:
  flutebook plugin facts
  flutebook plugin facts --json)";

inline constexpr const char* of_new =
    R"(Makes the folder NAME here: a plugin that works, its build, a golden order and a page about both.

Examples:
  flutebook plugin new varnish)";

inline constexpr const char* of_plugin = R"(Examples:
  flutebook plugin list
  flutebook plugin graph
  flutebook plugin describe plugins/varnish.so
  flutebook plugin check plugins/varnish.so
  flutebook plugin new varnish)";

inline constexpr const char* of_all = R"(Examples:
  flutebook --plant config/demo quote config/demo/requests/R-1001-everyday-box.yaml
  flutebook --plant config/demo plugin graph
  flutebook quote --help)";

inline constexpr const char* of_post =
    R"(Files of production documents into the ledger: each row once, all files or none. A document is
known by its header row, and every row that is refused is listed with its file, line and column.
Rows that were posted before are skipped.

  ref,date,shift,corrugator,paper,kg                     paper issued; back where kg is negative
  ref,date,shift,corrugator,order,metres,order_change_metres,good_sheets
                                                         with roll_width,outs before metres where
                                                         they were not the order's own
  ref,date,shift,converter,order,fed,setup_sheets,rejected,good_boxes
  ref,date,shift,centre,cause,kg                         scrap, weighed
  ref,date,shift,grade,kg                                a bale
  ref,date,mill,grade,sent,kg,moisture,per_tonne         a mill's ticket; sent may be left out
  ref,date,centre,class,amount                           a centre's cost of a month
  ref,date,account,of,kg,amount                          a count
Each may end in ,note.

Examples:
  flutebook post 2026-10/*.csv --dry-run
  flutebook post 2026-10/*.csv)";

inline constexpr const char* of_month =
    R"(Every tonne of a month: what each machine took in, made and lost, each cause of loss beside what
was unavoidable, what it cost, and what became of the scrap. The account of a month that is open
may still change.

Examples:
  flutebook month 2026-10
  flutebook month 2026-10 --by machine
  flutebook month 2026-10 --export 2026-10.xlsx
  flutebook month 2026-10 --html 2026-10.html)";

inline constexpr const char* of_close =
    R"(Posts what counts found, seals the month and prints the head of the ledger's chain: keep it
elsewhere, for `flutebook verify --head`. Months are closed in their order and stay closed.

Exit code: 0 closed; 1 refused: more is unexplained than the plant allows, and nobody said why, or
a stock is below zero.

Examples:
  flutebook close 2026-10
  flutebook close 2026-10 --why "scale of the baler failed from the 12th to the 15th")";

inline constexpr const char* of_reverse =
    R"(Posts the mirror of an entry. It is dated like the entry, or, where that month is closed, on the
first day that is open.

Examples:
  flutebook reverse 4711 --why "posted under the wrong order"
  flutebook reverse 4711 --why "posted under the wrong order" --date 2026-11-03)";

inline constexpr const char* of_verify =
    R"(Reads the whole ledger, works every hash and every total out again, and names what is wrong.

Exit code: 0 whole; 1 something is wrong.

Examples:
  flutebook verify
  flutebook verify --head 3f5a...)";

inline constexpr const char* of_backup =
    R"(Copies the ledger while others may post, proves the copy whole, and only then gives it its name.

Examples:
  flutebook backup /mnt/safe/ledger-2026-10-31.db)";

}  // namespace flutebook::cli::examples
