#include "host/cli/beside_options.hpp"

namespace flutebook::cli {

const char* const beside_footer =
    R"(

Comparisons: --with names a number of the plant by the path that messages use (`plugins.` may be
left out, `*` stands for every name), or a number of the request after `request.`. +N% and -N%
change each number of a list or table; a value replaces the number that applies. Together with
--board, --margin, --price, --rank or a way, the numbers of --with are changed first. No file is
changed, and none of these answers can be saved.

  flutebook quote R-1001.yaml --with papers.TL125.price=+5%
  flutebook quote R-1001.yaml --with energy.power_price=0.19 --with machines.FG1.setup.minutes=15
  flutebook quote R-1001.yaml --board B-140,C-125 --margin 15,18,22
  flutebook quote R-1001.yaml --board B-140,C-125 --with papers.*.price=+5%
  flutebook quote R-1001.yaml --price 590 --json
  flutebook quote R-1001.yaml --board any --bct 3.0
  flutebook quote R-1001.yaml --corrugator C1 --roll 2050 --ups 1
  flutebook quote R-1001.yaml --rank 5000)";

void add_beside_options(Command& command, beside::Asked& asked) {
    command.repeated_option("--with", "NAME=VALUE", "change this number, and show each line before and after",
                            beside::read_changes(asked.changes));
    command.option("--board", "A,B", "the same request on each of these boards; `any` beside --ect or --bct",
                   beside::read_boards(asked.alternatives.boards));
    command.option("--ect", "KN/M", "find the cheapest board with this edge crush resistance",
                   beside::read_strength(asked.strength.ect_kn_m));
    command.option("--bct", "KN", "find the cheapest board whose box is estimated to bear this from above",
                   beside::read_strength(asked.strength.bct_kn));
    command.option("--margin", "M,N", "at each of these margins, in per cent of the price",
                   beside::read_margins(asked.alternatives.margins));
    command.option("--price", "P,Q", "the margin at each of these prices per thousand",
                   beside::read_prices(asked.alternatives.prices));
    command.option_with_optional_number("--rank", "[QUANTITY]",
                                        "how the price changes when each number behind it changes by a tenth",
                                        beside::read_rank(asked.rank));
    command.option("--corrugator", "CODE", "only ways on this corrugator", read_line(asked.way.corrugator));
    command.option("--roll", "MM", "only ways on a roll of this width", beside::read_roll(asked.way.roll_width_mm));
    command.option("--ups", "N", "only ways with this number of boxes on a sheet", beside::read_ups(asked.way.ups));
}

}  // namespace flutebook::cli
