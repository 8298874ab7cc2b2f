// The answer of a recheck: what a saved quote costs today, how that differs from the saved answer, and what caused the
// difference. Plain values, and the document that `quote recheck --json` writes.
#pragma once

#include <chrono>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "host/answers/changed_plugin.hpp"
#include "host/base/date.hpp"
#include "host/base/place.hpp"
#include "host/plant/plant.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::answers {

/// A value, or a list of plain values, with its place.
struct Leaf {
    std::string path;              // "papers.KL135.price[2026-01-01].per_tonne"
    std::string text;              // as it was written; a list as "[1850, 2050]"
    std::optional<double> number;  // of what is a number
    base::Place place;             // of a leaf of a file
    std::string unit = "";         // of a figure: "mm", "kg", "money", "1"; empty where it is no number
};

/// `was` alone: removed; `now` alone: added.
struct Difference {
    std::string path;
    std::optional<Leaf> was, now;

    /// now - was, to a billionth, where both are numbers.
    [[nodiscard]] std::optional<double> by() const;
};

struct ChangedKey {
    std::string file;       // "papers.yaml"
    Difference difference;  // a key that is there today has its place in today's file
};

/// The totals of a quantity that can be made.
struct Total {
    Money cost, cost_per_thousand, price_per_thousand;
};

/// A cost line at one step or ply whose amount has changed.
struct ChangedLine {
    struct Figures {
        std::string machine;  // or "dispatch"
        double quantity, rate;
        std::string unit;
        Money amount;
    };
    std::string plugin, line;
    std::size_t step;                 // today's, or the saved one
    std::optional<std::size_t> ply;   // outside first
    std::optional<Figures> was, now;  // `was` alone: no longer charged; `now` alone: charged only today
    std::string title = "";           // of the line

    [[nodiscard]] Money by() const;
};

/// A quantity of boxes or sets; or of one piece of a set, behind its set.
struct ChangedQuantity {
    double quantity;
    std::optional<Total> was, now;
    std::vector<Difference> figures;  // all except lines, with the totals, by their keys in the JSON
    std::vector<ChangedLine> lines;   // in today's order, then those no longer charged
    std::vector<std::string> limits;  // why it cannot be made today, though it could: "WAY: LIMIT"
    std::string piece = "";           // of a set; it has no price

    /// A figure whose key only one of the two documents has is listed, but is no difference.
    [[nodiscard]] bool differs() const;
};

/// The saved files costed with today's plugins.
struct Reproduction {
    enum class Ends { to_the_byte, otherwise, unfit };
    Ends ends;
    std::vector<std::string> complaints;       // of what is unfit
    std::vector<std::optional<Total>> totals;  // by quantity; none of what is unfit
};

/// Today's files costed with today's plugins.
struct TodaysAnswer {
    enum class Ends { answered, refused, model_at_fault };
    Ends ends;
    std::vector<std::string> complaints;      // where there is no answer
    std::vector<Difference> heading;          // the plant's name, the currency
    std::vector<ChangedQuantity> quantities;  // each that has an answer
};

/// What caused today's answer to differ.
/// `ledger`: its share of trim alone; where the plant's files differ too, it is among what they are said to do.
enum class Cause { nothing_differs, plant_files, plugins, both, unknown, ledger };

/// The share of trim that was quoted, and today's; nothing of an order that pays its own roll, or has no answer.
struct TrimBeside {
    std::optional<plant::TrimPolicy> was = std::nullopt, now = std::nullopt;

    [[nodiscard]] bool differs() const { return now && was != now; }
    /// Whether the ledger, or want of it, decided one of them.
    [[nodiscard]] bool is_by_ledger() const { return (was && was->origin) || (now && now->origin); }
};

struct Recheck {
    std::string quote, request;
    std::string who;
    std::chrono::sys_seconds when;
    std::optional<base::Date> date;  // the date of its prices; nothing where only a request that cannot be read has it
    plant::Plant plant;              // today's
    std::vector<ChangedKey> keys;
    std::vector<ChangedPlugin> plugins;
    Reproduction reproduction;
    TodaysAnswer today;
    Cause cause;
    /// The day of today's prices, where another than the quote's was asked for.
    std::optional<base::Date> new_date = std::nullopt;
    TrimBeside trim = {};

    /// Whether any figure differs today.
    [[nodiscard]] bool differs() const { return cause != Cause::nothing_differs; }
};

/// The document:
///
/// {"quote", "request", "saved": {"who", "when" (UTC)}, "date" (whose prices; null where unknown),
///  "new_date" (whose prices today's answer has, with --date; else null), "plant", "currency",
///  "differs" (true false), "cause" (nothing-differs plant-files plugins both unknown ledger; with --date the prices of
///  the new day are of the plant's files), "plant_files": [{"file", "key", "was", "now", "place" ("FILE:LINE:COLUMN" of
///  today, null of what was removed)}...], "plugins": [{"id", "was", "now"}...], was and now {"version", "sha256"} or
///  null, "saved_files": {"ends" (to-the-byte otherwise unfit), "complaints": [sentence...]}, "today": {"ends"
///  (answered refused model-at-fault), "complaints": [sentence...]}, "heading": [D...], the plant's name and currency,
///  "trim": {"was": P, "now": P}, only of a share: P as in `quote --json` without "alone", null where there is none,
///  "quantities": [{"quantity", "differs", "was": T, "saved_files": T, "now": T, "figures": [D...], "lines": [L...],
///    "limits": ["WAY: LIMIT"...]}...]}, behind a quantity of a set its pieces, each with "piece", its name
/// T = {"cost", "cost_per_thousand", "price_per_thousand"}, null where it cannot be made; "saved_files" is the cost of
/// the saved files with today's plugins, so that now - was = (saved_files - was) by the plugins or the program
/// + (now - saved_files) by the plant's files.
/// D = {"key" (as in `quote --json`, entries of lists counted from 1), "was", "now" (texts, null where there is
/// none), "by" (null of what is no number)}.
/// L = {"plugin", "line", "step", "ply", "was": F, "now": F, "by"}, F = {"machine", "quantity", "rate", "unit",
/// "amount"} or null.
[[nodiscard]] std::string recheck_document(const Recheck& checked);

}  // namespace flutebook::answers
