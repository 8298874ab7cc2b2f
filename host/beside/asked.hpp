// The comparisons that may be asked for: other numbers, boards, margins or prices, what moves the price, the cheapest
// board of a strength, one way of making it. Each face has its own names for these; their values are read alike.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/command_line/option_readers.hpp"
#include "host/what_if/alternatives.hpp"
#include "host/what_if/compare.hpp"
#include "host/what_if/rank.hpp"
#include "host/what_if_answers/board_search_answer.hpp"

namespace flutebook::beside {

/// What moves the price: at every quantity, or at one.
struct AskedRank {
    std::optional<double> quantity;
};

struct Asked {
    std::vector<what_if::NumberChange> changes;
    what_if::AskedAlternatives alternatives;
    std::optional<AskedRank> rank;
    what_if_answers::AskedStrength strength;  // the cheapest board that has it
    answers::ForcedWay way;

    /// Whether something else than a quote answers.
    [[nodiscard]] bool is_any() const { return !changes.empty() || alternatives.is_any() || rank || strength.is_any(); }
};

/// What a face calls them, for messages.
struct Names {
    const char *with, *board, *margin, *price, *rank, *ect, *bct, *corrugator, *roll, *ups;
};
inline constexpr Names option_names{"--with", "--board", "--margin",     "--price", "--rank",
                                    "--ect",  "--bct",   "--corrugator", "--roll",  "--ups"};
/// Of one that was given, for messages; empty where none was.
[[nodiscard]] std::string first_name(const Asked& asked, const Names& names);

/// Why these cannot stand together; empty where they can.
[[nodiscard]] std::string wrong_together(const Asked& asked, const Names& names);

/// Each stores into what must outlive the reader. `NAME=VALUE` is added to those before.
[[nodiscard]] cli::Reader read_changes(std::vector<what_if::NumberChange>& changes);
/// "B-140,C-140", or "any" beside a strength.
[[nodiscard]] cli::Reader read_boards(std::vector<std::string>& boards);
[[nodiscard]] cli::Reader read_margins(std::vector<double>& margins);
[[nodiscard]] cli::Reader read_prices(std::vector<Money>& prices);
[[nodiscard]] cli::Reader read_strength(std::optional<double>& value);
/// A quantity, or nothing for all.
[[nodiscard]] cli::Reader read_rank(std::optional<AskedRank>& rank);
[[nodiscard]] cli::Reader read_roll(std::optional<double>& roll_width_mm);
[[nodiscard]] cli::Reader read_ups(std::optional<double>& ups);

}  // namespace flutebook::beside
