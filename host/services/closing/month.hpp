// The month's account, the use-case both faces call: read from the ledger's totals, worked out, put beside the twelve
// months before.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "host/month/account.hpp"
#include "host/month/breakdown.hpp"
#include "host/month/closing.hpp"
#include "host/month_answers/month_answer.hpp"
#include "host/plant/plant.hpp"
#include "ledger/store/store.hpp"
#include "ledger/writing/close.hpp"

namespace flutebook::services {

/// The kind of the entry that a close keeps the month's account in; its ref is the month.
inline constexpr const char* month_account_kind = "month-account";

/// machine, shift, board or order, as answers call them; nothing for another text.
[[nodiscard]] std::optional<ledger::Axis> axis_of(const std::string& text);

struct MonthOptions {
    enum class Trend { none, twelve_months };
    ledger::Month month;
    std::optional<ledger::Axis> by;
    Trend trend;
    ledger::Date today;  // by the machine's clock: whether the month is over
};

/// Reads accounts from a ledger. A month begins with what the one before it ended with: with the sealed stocks where
/// that was closed, else with its account, worked out on the way. Reads the store it was given, which outlives it; one
/// thread at a time.
class MonthReader {
public:
    MonthReader(const plant::Plant& plant, const ledger::Store& store);

    /// Throws LedgerError.
    [[nodiscard]] const month::MonthAccount& account(ledger::Month month);
    /// What decides whether the month can be closed on that day.
    [[nodiscard]] month::ClosingFacts closing_facts(ledger::Month month, ledger::Date today) const;
    /// Whether the month is closed and its close kept no account, as closes did once: it is worked out by today's
    /// rules.
    [[nodiscard]] bool is_worked_out_again(ledger::Month month) const;
    /// The months in which something was posted, earliest first.
    [[nodiscard]] const std::vector<ledger::Month>& months() const { return months_; }

private:
    [[nodiscard]] std::vector<ledger::Balance> opening(ledger::Month month);
    [[nodiscard]] std::optional<ledger::Month> open_before(ledger::Month month) const;
    void work_out(ledger::Month month);
    // The account that the month's close kept; nothing where it kept none.
    [[nodiscard]] std::optional<month::MonthAccount> kept_account(ledger::Month month) const;

    const plant::Plant& plant_;
    const ledger::Store& store_;
    std::vector<ledger::Month> months_;
    std::optional<ledger::Month> last_closed_;
    std::map<ledger::Month, month::MonthAccount> accounts_;
};

/// Throws LedgerError. The answer is of one instant, whatever is posted meanwhile.
[[nodiscard]] answers::MonthAnswer month(const plant::Plant& plant, const ledger::Store& store,
                                         const MonthOptions& asked);

/// The same with a reader of that store, for whoever reads more accounts of it: none is worked out twice. The caller
/// holds the snapshot.
[[nodiscard]] answers::MonthAnswer month(const plant::Plant& plant, const ledger::Store& store, MonthReader& reader,
                                         const MonthOptions& asked);

}  // namespace flutebook::services
