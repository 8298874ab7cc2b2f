// A saved quote worked out again: what would be answered today, how it differs from what was answered, and whose doing
// that is. The quote itself stays as it was.
//
// It is worked out twice, by today's plugins both times: from the files that were kept, and from the plant's files of
// today. What the first differs from the saved answer in, the plugins or the program did; the rest, the files.
#pragma once

#include <chrono>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "host/services/quoting/changed_inputs.hpp"
#include "host/services/quoting/changed_plugins.hpp"
#include "host/services/quoting/changed_quotes.hpp"
#include "host/services/quoting/quote.hpp"
#include "host/services/quoting/saved_quote.hpp"
#include "ledger/reading/quotes.hpp"

namespace flutebook::services {

/// How the face shows an answer alone, as it does when a quote is saved.
using Show = std::function<Shown(const plant::Plant&, const RequestAnswer&, const QuoteOptions&)>;

struct RecheckOptions {
    std::string folder;  // the plant's, today
    unsigned threads = 1;
};

/// The saved files by today's plugins.
struct Reproduction {
    enum class Ends { to_the_byte, otherwise, unfit };
    Ends ends;
    std::vector<std::string> complaints;       // of what is unfit
    std::vector<std::optional<Total>> totals;  // by quantity; none of what is unfit
};

/// Today's files by today's plugins.
struct TodaysAnswer {
    enum class Ends { answered, refused, model_at_fault };
    Ends ends;
    std::vector<std::string> complaints;      // where nothing was answered
    std::vector<Difference> heading;          // the plant's name, the currency
    std::vector<ChangedQuantity> quantities;  // each that was answered
};

/// Whose doing it is that today's answer differs.
enum class Cause { nothing_differs, plant_files, plugins, both, unknown };

struct Recheck {
    std::string quote, request;
    std::string who;
    std::chrono::sys_seconds when;
    std::optional<base::Date> date;  // whose prices it has; nothing where only the unreadable request said it
    plant::Plant plant;              // today's
    std::vector<ChangedKey> keys;
    std::vector<ChangedPlugin> plugins;
    Reproduction reproduction;
    TodaysAnswer today;
    Cause cause;

    /// Whether anything that was answered would be answered otherwise today.
    [[nodiscard]] bool differs() const { return cause != Cause::nothing_differs; }
};

/// Throws InputError (plant) or ModelError where the plant of today is not fit, LedgerError where a part of the quote
/// is not there. To be called before any other file is opened for writing.
[[nodiscard]] Recheck recheck(const ledger::SavedQuote& quote, const RecheckOptions& asked, const Show& show);

}  // namespace flutebook::services
