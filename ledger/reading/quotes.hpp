// Saved quotes and the orders taken from them, never changed, and how a quote's number is written: Q000001.
//
// The ledger does not read what is in them: each is a list of named parts (a request, the plant's files, the plugins
// with their versions and hashes, the results). Equal parts are stored once.
#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

#include "ledger/store/store.hpp"

namespace flutebook::ledger {

/// Any bytes under a name that is unique within its quote or order, such as "request.yaml" or "plant/papers.yaml".
struct QuotePart {
    std::string name, content;
};

/// What is said of a quote under a name: a text, or a whole number in a unit that the name implies.
struct QuoteAttribute {
    std::string name;
    std::variant<std::string, std::int64_t> value;

    friend bool operator==(const QuoteAttribute&, const QuoteAttribute&) = default;
};

struct QuoteDraft {
    std::string request;  // the request's own number
    std::vector<QuotePart> parts;
    /// Names of parts: a quote of the same request, saved before with the same content in these, is the same quote.
    /// Empty: none is.
    std::vector<std::string> same_by = {};
    /// What it is found by: its record of kind `found_by_kind` (see records.hpp), in the same act. Empty: none.
    std::vector<QuoteAttribute> attributes = {};
};

struct SavedQuote {
    std::string number;  // Q000001, Q000002, ...
    std::string request;
    std::vector<QuotePart> parts;  // in the order they were given
    std::string who;
    std::chrono::sys_seconds when;
};

/// Saves all, or none; answers with their numbers, on disk when it returns. What was saved before keeps its number, and
/// is not saved again. Throws LedgerError.
[[nodiscard]] std::vector<std::string> save_quotes(Store& store, std::span<const QuoteDraft> quotes,
                                                   const std::string& who);

[[nodiscard]] std::optional<SavedQuote> find_quote(const Store& store, const std::string& number);

struct OrderDraft {
    std::string number;  // the plant's own
    std::string quote;   // Q000001
    std::int64_t quantity;
    std::vector<QuotePart> parts;  // the layout and the allowances that its runs are measured against
};

struct SavedOrder {
    OrderDraft order;
    std::string who;
    std::chrono::sys_seconds when;
};

/// On disk when it returns. Throws LedgerError, refused: the number is taken, there is no such quote.
void take_order(Store& store, const OrderDraft& order, const std::string& who);
/// Takes all in one act, or none.
void take_orders(Store& store, std::span<const OrderDraft> orders, const std::string& who);

[[nodiscard]] std::optional<SavedOrder> find_order(const Store& store, const std::string& number);
/// The numbers of all orders, in the order they were taken.
[[nodiscard]] std::vector<std::string> order_numbers(const Store& store);
/// Those that begin with `number` and a stroke: `26-0417/lid` of `26-0417`.
[[nodiscard]] std::vector<std::string> order_numbers_under(const Store& store, const std::string& number);
/// The numbers of all quotes, oldest first.
[[nodiscard]] std::vector<std::string> quote_numbers(const Store& store);

[[nodiscard]] std::string quote_number(std::int64_t number);
/// Nothing where the text is not how a number is written.
[[nodiscard]] std::optional<std::int64_t> parse_quote_number(const std::string& text);

}  // namespace flutebook::ledger
