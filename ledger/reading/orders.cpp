// Implements the orders part of quotes.hpp.
#include <fmt/format.h>

#include "ledger/reading/quotes.hpp"
#include "ledger/store/parts.hpp"
#include "ledger/writing/draft_check.hpp"
#include "ledger/writing/entry_writer.hpp"
#include "ledger/writing/saved_entry.hpp"

namespace flutebook::ledger {

namespace {

std::int64_t expect_quote(Connection& connection, const std::string& number) {
    const auto quote = parse_quote_number(number);
    if (quote) {
        auto row = connection.ask_entries("SELECT 1 FROM quote WHERE id = ?");
        row->bind(1, *quote);
        if (row->step()) return *quote;
    }
    connection.refuse(fmt::format("there is no saved quote `{}`; save the quote first", number));
}

void check_order(Connection& connection, const OrderDraft& order) {
    if (order.number.empty()) connection.refuse("an order has no number; give it the plant's own");
    if (const auto fault = fault_of_name("the order's number", order.number)) connection.refuse(*fault);
    if (order.quantity < 1)
        connection.refuse(
            fmt::format("order {} is of {} pieces; an order is of one or more", order.number, order.quantity));
    check_parts(connection, "order " + order.number, order.parts);
    auto row = connection.ask_entries("SELECT 1 FROM taken_order WHERE number = ?");
    row->bind(1, order.number);
    if (row->step()) connection.refuse(fmt::format("order {} was taken before; give another number", order.number));
}

std::int64_t newest_order(Connection& connection) {
    auto row = connection.ask_entries("SELECT coalesce(max(id), 0) FROM taken_order");
    row->step();
    return row->number(0);
}

void add_order(Connection& connection, const OrderDraft& order, std::int64_t quote, const Actor& actor) {
    const auto id = newest_order(connection) + 1;
    const auto when = actor.when.time_since_epoch().count();
    ChainText text;
    text.begin(orders_head(connection), "order 1");
    text.number(id);
    text.text(order.number);
    text.text(order.quote);
    text.number(order.quantity);
    text.text(actor.who);
    text.number(when);
    add_parts(connection, "INSERT OR ROLLBACK INTO taken_order_part VALUES (?, ?, ?)", id * 1000, order.parts, text);
    const auto hash = text.hash();
    const auto who = connection.entry_writer().names().number_of(actor.who);
    auto row = connection.ask_entries("INSERT OR ROLLBACK INTO taken_order VALUES (?, ?, ?, ?, ?, ?, ?)");
    row->bind(1, id).bind(2, order.number).bind(3, quote).bind(4, order.quantity).bind(5, who).bind(6, when);
    row->bind_bytes(7, bytes_of(hash)).run();
}

}  // namespace

void take_order(Store& store, const OrderDraft& order, const std::string& who) {
    take_orders(store, {&order, 1}, who);
}

void take_orders(Store& store, std::span<const OrderDraft> orders, const std::string& who) {
    auto& connection = store.connection();
    if (const auto fault = fault_of_name("the writer's name", who)) connection.refuse(*fault);
    Transaction transaction(connection);
    for (const OrderDraft& order : orders) {
        check_order(connection, order);
        add_order(connection, order, expect_quote(connection, order.quote), {who, connection.clock().now()});
    }
    record_saved(connection, who);
    transaction.commit();
}

std::optional<SavedOrder> find_order(const Store& store, const std::string& number) {
    auto& connection = store.connection();
    SavedOrder saved;
    std::int64_t id = 0;
    {
        auto row = connection.ask_entries(
            "SELECT o.id, o.quote, o.quantity, w.text, o.written FROM taken_order AS o JOIN name AS w ON w.id = o.who "
            "WHERE o.number = ?");
        row->bind(1, number);
        if (!row->step()) return std::nullopt;
        id = row->number(0);
        saved.order.number = number;
        saved.order.quote = quote_number(row->number(1));
        saved.order.quantity = row->number(2);
        saved.who = row->text(3);
        saved.when = std::chrono::sys_seconds(std::chrono::seconds(row->number(4)));
    }
    saved.order.parts =
        read_parts(connection,
                   "SELECT p.name, c.bytes, c.size FROM taken_order_part AS p JOIN content AS c ON c.id = "
                   "p.content WHERE p.id BETWEEN ?1 * 1000 AND ?1 * 1000 + 999 ORDER BY p.id",
                   id);
    return saved;
}

std::vector<std::string> order_numbers(const Store& store) {
    auto rows = store.connection().ask_entries("SELECT number FROM taken_order ORDER BY id");
    std::vector<std::string> numbers;
    while (rows->step()) numbers.push_back(rows->text(0));
    return numbers;
}

// By the index of numbers: `0` is the sign after the stroke.
std::vector<std::string> order_numbers_under(const Store& store, const std::string& number) {
    auto rows = store.connection().ask_entries(
        "SELECT number FROM taken_order WHERE number > ?1 || '/' AND number < ?1 || '0' ORDER BY id");
    rows->bind(1, number);
    std::vector<std::string> numbers;
    while (rows->step()) numbers.push_back(rows->text(0));
    return numbers;
}

}  // namespace flutebook::ledger
