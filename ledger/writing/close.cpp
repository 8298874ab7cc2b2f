#include "ledger/writing/close.hpp"

#include <fmt/format.h>

#include <map>
#include <variant>

#include "ledger/proof/seal_check.hpp"
#include "ledger/reading/month.hpp"
#include "ledger/store/connection.hpp"
#include "ledger/store/parts.hpp"
#include "ledger/writing/chain.hpp"
#include "ledger/writing/draft_check.hpp"
#include "ledger/writing/entry_writer.hpp"
#include "ledger/writing/posting.hpp"
#include "ledger/writing/sealed_content.hpp"

namespace flutebook::ledger {

namespace {

void post_differences(Posting& posting, Connection& connection, const Close& close) {
    for (const auto& draft : close.differences) {
        if (draft.date.year() / draft.date.month() != close.month)
            connection.refuse(
                fmt::format("{} {}: a difference is dated in the month that it closes", draft.kind, draft.ref));
        if (!std::holds_alternative<Posted>(posting.add(draft, DraftSource::books)))
            connection.refuse(
                fmt::format("{} {}: was posted before; give the difference a ref of its own", draft.kind, draft.ref));
    }
}

void expect_nothing_below_zero(const Connection& connection, const Close& close, const std::vector<Balance>& stocks) {
    std::map<std::string, Grams> held;
    for (const auto& stock : stocks) held[stock.account] += stock.mass;
    std::vector<std::string> lines;
    for (const auto& account : close.inner_accounts)
        if (const auto found = held.find(account); found != held.end() && found->second < Grams{})
            lines.push_back(fmt::format("{}: {} ends {} below zero: found {} kg; count it, or post what is missing",
                                        connection.file(), account, to_text(close.month), found->second.to_kg()));
    if (!lines.empty()) throw LedgerError(LedgerError::Kind::refused, lines);
}

std::int64_t add_closing_entry(const Store& store, const Close& close, const std::vector<Balance>& stocks) {
    auto& connection = store.connection();
    SealedContent content;
    content.month = close.month;
    content.totals = totals_hash(close.month, flows(store, close.month), expected_losses(store, close.month));
    content.stocks = stocks_hash(close.month, stocks);
    content.quotes = quotes_head(connection);
    content.orders = orders_head(connection);
    content.inner_accounts = close.inner_accounts;
    Draft draft;
    draft.kind = close_kind;
    draft.ref = to_text(close.month);
    draft.content = to_text(content);
    draft.date = std::chrono::year_month_day_last(close.month.year(), std::chrono::month_day_last(close.month.month()));
    draft.note = close.note;
    if (const auto fault = fault_of(draft, DraftSource::books))
        connection.refuse(fmt::format("close {}: {}", draft.ref, *fault));
    auto& writer = connection.entry_writer();
    return writer.add(draft, writer.actor(close.who, connection.clock().now()));
}

void add_seal(Connection& connection, Month month, std::int64_t entry, const std::vector<Balance>& stocks) {
    auto& names = connection.entry_writer().names();
    for (const auto& stock : stocks) {
        const auto account = names.number_of(stock.account);
        const auto material = names.number_of(stock.material);
        auto row = connection.ask("INSERT OR ROLLBACK INTO seal_stock VALUES (?, ?, ?, ?, ?)");
        row->bind(1, to_number(month)).bind(2, account).bind(3, material);
        row->bind(4, stock.mass.count()).bind(5, stock.money.ten_thousandths()).run();
    }
    auto seal = connection.ask("INSERT OR ROLLBACK INTO seal VALUES (?, ?)");
    seal->bind(1, to_number(month)).bind(2, entry).run();
}

std::optional<Seal> read_seal(Lease& row) {
    if (!row->step()) return std::nullopt;
    Seal seal;
    seal.month = month_of(row->number(0));
    seal.entry = row->number(1);
    seal.head = to_hex(from_bytes(row->view(2)).value_or(Hash{}));
    seal.note = row->text(3);
    seal.who = row->text(4);
    seal.when = std::chrono::sys_seconds(std::chrono::seconds(row->number(5)));
    return seal;
}

}  // namespace

void expect_in_turn(const Store& store, Month month) {
    auto& connection = store.connection();
    if (!month.ok()) connection.refuse("there is no such month");
    if (is_closed(store, month)) connection.refuse(fmt::format("{} is closed already", to_text(month)));
    const auto seal = last_seal(store);
    for (const auto held : months(store))
        if (held < month && (!seal || held > seal->month))
            connection.refuse(fmt::format("{} is still open; close it before {}", to_text(held), to_text(month)));
}

Seal close_month(Store& store, const Close& close) {
    auto& connection = store.connection();
    Posting posting(store, close.who);
    expect_in_turn(store, close.month);
    expect_fit_to_close(store, close.month);
    post_differences(posting, connection, close);
    const auto stocks = balances_before(store, close.month + std::chrono::months(1));
    expect_nothing_below_zero(connection, close, stocks);
    const auto entry = add_closing_entry(store, close, stocks);
    add_seal(connection, close.month, entry, stocks);
    static_cast<void>(posting.commit());
    return seal_of(store, close.month).value();
}

std::optional<Seal> last_seal(const Store& store) {
    auto row = store.connection().ask_entries(
        "SELECT s.month, s.entry, e.hash, e.note, w.text, e.written FROM seal AS s JOIN entry AS e ON e.id = s.entry "
        "JOIN name AS w ON w.id = e.who ORDER BY s.month DESC LIMIT 1");
    return read_seal(row);
}

std::optional<Seal> seal_of(const Store& store, Month month) {
    auto row = store.connection().ask_entries(
        "SELECT s.month, s.entry, e.hash, e.note, w.text, e.written FROM seal AS s JOIN entry AS e ON e.id = s.entry "
        "JOIN name AS w ON w.id = e.who WHERE s.month = ?");
    row->bind(1, to_number(month));
    return read_seal(row);
}

bool is_closed(const Store& store, Month month) {
    const auto seal = last_seal(store);
    return seal && month <= seal->month;
}

}  // namespace flutebook::ledger
