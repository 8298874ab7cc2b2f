#include "ledger/writing/saved_entry.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <chrono>

#include "ledger/store/parts.hpp"
#include "ledger/writing/chain.hpp"

namespace flutebook::ledger {

namespace {

struct HeadLine {
    std::int64_t number;
    Hash head;
};

// Takes "quotes 12 HEX" and its end of line off the text.
std::optional<HeadLine> take_head_line(std::string_view& text, std::string_view what) {
    if (text.substr(0, what.size()) != what) return std::nullopt;
    text.remove_prefix(what.size());
    HeadLine line{};
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), line.number);
    text.remove_prefix(static_cast<std::size_t>(end - text.data()));
    constexpr std::size_t rest = 1 + 64 + 1;  // a blank, the digits, the end of the line
    if (error != std::errc() || text.size() < rest || text.front() != ' ' || text[rest - 1] != '\n')
        return std::nullopt;
    const auto head = from_hex(text.substr(1, 64));
    if (!head) return std::nullopt;
    line.head = *head;
    text.remove_prefix(rest);
    return line;
}

std::int64_t newest_number(Lease row) {
    row->step();
    return row->number(0);
}

SavedHeads heads_now(Connection& connection) {
    return {newest_number(connection.ask_entries("SELECT coalesce(max(id), 0) FROM quote")),
            newest_number(connection.ask_entries("SELECT coalesce(max(id), 0) FROM taken_order")),
            quotes_head(connection),
            orders_head(connection),
            newest_number(connection.ask_entries("SELECT coalesce(max(id), 0) FROM quote_record")),
            records_head(connection)};
}

bool is_recorded(Connection& connection, const std::string& ref) {
    const auto kind = connection.entry_writer().names().number_of(saved_kind);
    auto row = connection.ask_entries("SELECT 1 FROM entry WHERE kind = ? AND ref = ?");
    return row->bind(1, kind).bind(2, ref).step();
}

// Today, or the first day that is open where today's month is closed.
Date saving_day(Connection& connection, std::chrono::sys_seconds when) {
    auto row = connection.ask_entries("SELECT coalesce(max(month), 200001) FROM seal");
    row->step();
    const Date today(std::chrono::floor<std::chrono::days>(when));
    const auto closed = month_of(row->number(0));
    return std::max(today, Date(closed / std::chrono::day(1)) + std::chrono::months(1));
}

}  // namespace

std::string to_text(const SavedHeads& heads) {
    auto text = fmt::format("quotes {} {}\norders {} {}\n", heads.quotes, to_hex(heads.quotes_head), heads.orders,
                            to_hex(heads.orders_head));
    if (heads.records > 0) text += fmt::format("records {} {}\n", heads.records, to_hex(heads.records_head));
    return text;
}

std::optional<SavedHeads> parse_saved(std::string_view text) {
    const auto quotes = take_head_line(text, "quotes ");
    const auto orders = quotes ? take_head_line(text, "orders ") : std::nullopt;
    if (!orders) return std::nullopt;
    SavedHeads heads{quotes->number, orders->number, quotes->head, orders->head};
    if (text.empty()) return heads;
    const auto records = take_head_line(text, "records ");
    if (!records || records->number < 1 || !text.empty()) return std::nullopt;
    heads.records = records->number;
    heads.records_head = records->head;
    return heads;
}

void record_saved(Connection& connection, const std::string& who) {
    const auto heads = heads_now(connection);
    if (heads == SavedHeads{}) return;
    Draft draft;
    draft.kind = saved_kind;
    draft.ref = fmt::format("{} quotes, {} orders", heads.quotes, heads.orders);
    if (heads.records > 0) draft.ref += fmt::format(", {} records", heads.records);
    if (is_recorded(connection, draft.ref)) return;
    draft.content = to_text(heads);
    auto& writer = connection.entry_writer();
    const auto actor = writer.actor(who, connection.clock().now());
    draft.date = saving_day(connection, actor.when);
    writer.add(draft, actor);
}

}  // namespace flutebook::ledger
