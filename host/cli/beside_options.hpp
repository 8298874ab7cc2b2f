// The options of `quote` that set something else beside what a request asks for.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/command_line/command.hpp"
#include "host/what_if/alternatives.hpp"
#include "host/what_if/compare.hpp"
#include "host/what_if/rank.hpp"
#include "host/what_if_answers/board_search_answer.hpp"

namespace flutebook::cli {

/// What moves the price: at every quantity, or at one.
struct AskedRank {
    std::optional<double> quantity;
};

struct BesideOptions {
    std::vector<what_if::NumberChange> changes;
    what_if::AskedAlternatives alternatives;
    std::optional<AskedRank> rank;
    what_if_answers::AskedStrength strength;  // the cheapest board that has it
    answers::ForcedWay way;

    /// Whether something else than a quote answers.
    [[nodiscard]] bool is_any() const { return !changes.empty() || alternatives.is_any() || rank || strength.is_any(); }
    /// Of an option that was given, for messages; empty where none was.
    [[nodiscard]] std::string first_name() const;
};

/// What the help of `quote` says of them.
extern const char* const beside_footer;

/// Adds the options to `quote`; `options` must outlive it.
void add_beside_options(Command& command, BesideOptions& options);

/// Why these options cannot stand together; empty where they can.
[[nodiscard]] std::string wrong_together(const BesideOptions& options);

}  // namespace flutebook::cli
