#include "ledger/reading/quotes.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "ledger/reading/records.hpp"
#include "ledger/store/parts.hpp"
#include "ledger/writing/draft_check.hpp"
#include "ledger/writing/entry_writer.hpp"
#include "ledger/writing/record_writer.hpp"
#include "ledger/writing/saved_entry.hpp"

namespace flutebook::ledger {

namespace {

std::int64_t newest_quote(Connection& connection) {
    auto row = connection.ask_entries("SELECT coalesce(max(id), 0) FROM quote");
    row->step();
    return row->number(0);
}

struct PartHash {
    std::string name;
    Hash sha256;
};

std::vector<PartHash> told_apart_by(const QuoteDraft& draft) {
    std::vector<PartHash> parts;
    for (const auto& part : draft.parts)
        if (std::find(draft.same_by.begin(), draft.same_by.end(), part.name) != draft.same_by.end())
            parts.push_back({part.name, sha256(part.content)});
    return parts;
}

bool has_part(Connection& connection, std::int64_t quote, const PartHash& part) {
    auto row = connection.ask_entries(
        "SELECT 1 FROM quote_part AS p JOIN content AS c ON c.id = p.content "
        "WHERE p.id BETWEEN ?1 * 1000 AND ?1 * 1000 + 999 AND p.name = ?2 AND c.sha256 = ?3");
    return row->bind(1, quote).bind(2, part.name).bind_bytes(3, bytes_of(part.sha256)).step();
}

// The newest quote of the same request that is the same; 0 where there is none.
std::int64_t find_same(Connection& connection, const QuoteDraft& draft) {
    if (draft.same_by.empty()) return 0;
    const auto parts = told_apart_by(draft);
    auto rows = connection.ask_entries("SELECT id FROM quote WHERE request = ? ORDER BY id DESC");
    rows->bind(1, draft.request);
    while (rows->step()) {
        const auto quote = rows->number(0);
        if (std::all_of(parts.begin(), parts.end(),
                        [&](const auto& part) { return has_part(connection, quote, part); }))
            return quote;
    }
    return 0;
}

std::int64_t save(Connection& connection, const QuoteDraft& draft, const Actor& actor) {
    check_parts(connection, "quote of request " + draft.request, draft.parts);
    if (const auto fault = fault_of_name("the request's number", draft.request)) connection.refuse(*fault);
    if (const auto same = find_same(connection, draft); same != 0) return same;
    const auto number = newest_quote(connection) + 1;
    ChainText text;
    text.begin(quotes_head(connection), "quote 1");
    text.number(number);
    text.text(draft.request);
    text.text(actor.who);
    text.number(actor.when.time_since_epoch().count());
    add_parts(connection, "INSERT OR ROLLBACK INTO quote_part VALUES (?, ?, ?)", number * 1000, draft.parts, text);
    const auto hash = text.hash();
    const auto who = connection.entry_writer().names().number_of(actor.who);
    auto row = connection.ask_entries("INSERT OR ROLLBACK INTO quote VALUES (?, ?, ?, ?, ?)");
    row->bind(1, number).bind(2, draft.request).bind(3, who).bind(4, actor.when.time_since_epoch().count());
    row->bind_bytes(5, bytes_of(hash)).run();
    if (!draft.attributes.empty()) add_record(connection, number, {found_by_kind, draft.attributes}, actor);
    return number;
}

}  // namespace

std::string quote_number(std::int64_t number) {
    return fmt::format("Q{:06}", number);
}

std::optional<std::int64_t> parse_quote_number(const std::string& text) {
    if (text.size() < 7 || text.size() > 16 || text[0] != 'Q') return std::nullopt;
    std::int64_t number = 0;
    for (const char sign : text.substr(1)) {
        if (sign < '0' || sign > '9') return std::nullopt;
        number = number * 10 + (sign - '0');
    }
    return quote_number(number) == text ? std::optional(number) : std::nullopt;
}

std::vector<std::string> save_quotes(Store& store, std::span<const QuoteDraft> quotes, const std::string& who) {
    auto& connection = store.connection();
    if (const auto fault = fault_of_name("the writer's name", who)) connection.refuse(*fault);
    Transaction transaction(connection);
    std::vector<std::string> numbers;
    for (const auto& quote : quotes)
        numbers.push_back(quote_number(save(connection, quote, {who, connection.clock().now()})));
    record_saved(connection, who);
    transaction.commit();
    return numbers;
}

std::optional<SavedQuote> find_quote(const Store& store, const std::string& number) {
    const auto id = parse_quote_number(number);
    if (!id) return std::nullopt;
    auto& connection = store.connection();
    SavedQuote quote;
    {
        auto row = connection.ask_entries(
            "SELECT request, w.text, written FROM quote JOIN name AS w ON w.id = who WHERE quote.id = ?");
        row->bind(1, *id);
        if (!row->step()) return std::nullopt;
        quote.number = number;
        quote.request = row->text(0);
        quote.who = row->text(1);
        quote.when = std::chrono::sys_seconds(std::chrono::seconds(row->number(2)));
    }
    quote.parts =
        read_parts(connection,
                   "SELECT p.name, c.bytes, c.size FROM quote_part AS p JOIN content AS c ON c.id = p.content "
                   "WHERE p.id BETWEEN ?1 * 1000 AND ?1 * 1000 + 999 ORDER BY p.id",
                   *id);
    return quote;
}

std::vector<std::string> quote_numbers(const Store& store) {
    auto rows = store.connection().ask_entries("SELECT id FROM quote ORDER BY id");
    std::vector<std::string> numbers;
    while (rows->step()) numbers.push_back(quote_number(rows->number(0)));
    return numbers;
}

}  // namespace flutebook::ledger
