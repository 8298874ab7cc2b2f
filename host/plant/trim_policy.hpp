// How orders pay for side trim: each for the trim of its own roll, or all for the average.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "host/fields/map_reader.hpp"
#include "ledger/values/entry.hpp"

namespace flutebook::plant {

/// What corrugators ran of one board, or of all, in some months, added up.
struct TrimRecord {
    std::int64_t runs = 0;    // rows of run documents that stand
    std::int64_t orders = 0;  // that they were for
    double changes = 0;       // order changes; of a web that orders shared, the part that each had of it
    Grams side_trim, board;   // of all board that was combined

    /// Both 0 where nothing was combined.
    [[nodiscard]] double share() const;
    [[nodiscard]] double changes_per_order() const;

    friend bool operator==(const TrimRecord&, const TrimRecord&) = default;
};

/// Where a share comes from that nobody wrote beside the order.
struct TrimOrigin {
    /// The runs of the order's board; those of all boards; the plant's own number, for want of runs.
    enum class Of { board, plant, first_days };
    Of of = Of::first_days;
    std::string board;                                // the order's, its code
    ledger::Month first{}, last{};                    // both looked at
    std::int64_t board_runs = 0, plant_runs = 0;      // that stand there
    std::optional<TrimRecord> record = std::nullopt;  // what it was counted from

    friend bool operator==(const TrimOrigin&, const TrimOrigin&) = default;
};

/// The part of a web, and of its order change, that an order pays.
struct TrimPolicy {
    /// The share of the combined board that is side trim on average: 0.03. Nothing: the order pays its own roll alone.
    std::optional<double> share = std::nullopt;
    /// Order changes that an order has on average: changes / orders. 1 where the order runs alone.
    double changes = 1;
    /// Nothing of numbers that the request gives.
    std::optional<TrimOrigin> origin = std::nullopt;

    friend bool operator==(const TrimPolicy&, const TrimPolicy&) = default;
};

/// How a person wants trim to be paid.
struct AskedTrim {
    enum class Way { alone, by_numbers, by_ledger };
    Way way = Way::alone;
    /// The numbers; of `by_ledger` those that count until the ledger has runs enough, without a share where there are
    /// none.
    TrimPolicy numbers = {};
};

/// The part of the web that an order pays whose sheets take `used` of a roll's width, in the same unit. 1 where it runs
/// alone, above 1 where its own trim is less than the average:
///   used / (roll_width x (1 - share))
[[nodiscard]] double web_share(const TrimPolicy& policy, double used, double roll_width);

/// `alone`, `share` for what the ledger says, or `{share: 0.03, changes: 0.6}` without `changes` for 1.
[[nodiscard]] AskedTrim read_asked_trim(const fields::Field& field);

/// Of a plant, whose numbers are for its first days: once the ledger has runs enough, it says the share.
[[nodiscard]] AskedTrim read_plant_trim(const fields::Field& field);

}  // namespace flutebook::plant
