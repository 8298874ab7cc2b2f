#include "ledger/store/parts.hpp"

#include <fmt/format.h>

#include <optional>
#include <set>

#include "ledger/store/packing.hpp"
#include "ledger/writing/draft_check.hpp"
#include "ledger/writing/entry_writer.hpp"

namespace flutebook::ledger {

namespace {

std::int64_t content_number(Connection& connection, const std::string& content, const Hash& hash) {
    auto found = connection.ask_entries("SELECT id FROM content WHERE sha256 = ?");
    found->bind_bytes(1, bytes_of(hash));
    if (found->step()) return found->number(0);
    const auto small = packed(content);
    auto added =
        connection.ask_entries("INSERT OR ROLLBACK INTO content (sha256, bytes, size) VALUES (?, ?, ?) RETURNING id");
    added->bind_bytes(1, bytes_of(hash)).bind_bytes(2, small ? *small : content);
    if (small)
        added->bind(3, static_cast<std::int64_t>(content.size()));
    else
        added->bind_nothing(3);
    added->step();
    return added->number(0);
}

Hash newest(Lease row) {
    return row->step() ? from_bytes(row->view(0)).value_or(Hash{}) : Hash{};
}

}  // namespace

void check_parts(const Connection& connection, const std::string& whose, std::span<const QuotePart> parts) {
    if (parts.size() > most_lines)
        connection.refuse(
            fmt::format("{} has too many parts: found {}; at most {} can be stored", whose, parts.size(), most_lines));
    std::set<std::string> names;
    for (const auto& part : parts) {
        if (part.name.empty()) connection.refuse(whose + " has a part without a name");
        if (const auto fault = fault_of_name("a part's name", part.name)) connection.refuse(whose + ": " + *fault);
        if (!names.insert(part.name).second) connection.refuse(fmt::format("{} has two parts `{}`", whose, part.name));
        if (part.content.size() > largest_content)
            connection.refuse(fmt::format("{}: part `{}` is too large: found {} bytes; at most {} can be stored", whose,
                                          part.name, part.content.size(), largest_content));
    }
}

void add_parts(Connection& connection, const char* table_sql, std::int64_t first, std::span<const QuotePart> parts,
               ChainText& text) {
    text.number(static_cast<std::int64_t>(parts.size()));
    for (const auto& part : parts) {
        const auto hash = sha256(part.content);
        text.text(part.name);
        text.bytes(bytes_of(hash));
        const auto content = content_number(connection, part.content, hash);
        connection.ask_entries(table_sql)->bind(1, first++).bind(2, part.name).bind(3, content).run();
    }
}

std::vector<QuotePart> read_parts(Connection& connection, const char* sql, std::int64_t of) {
    auto rows = connection.ask_entries(sql);
    rows->bind(1, of);
    std::vector<QuotePart> parts;
    while (rows->step()) {
        auto content = rows->is_nothing(2) ? std::optional(rows->text(1)) : unpacked(rows->view(1), rows->number(2));
        if (!content)
            connection.give_up(fmt::format(
                "a saved part `{}` cannot be read: the file is damaged; run `flutebook verify`", rows->text(0)));
        parts.push_back({rows->text(0), *std::move(content)});
    }
    return parts;
}

Hash quotes_head(Connection& connection) {
    return newest(connection.ask_entries("SELECT hash FROM quote ORDER BY id DESC LIMIT 1"));
}

Hash orders_head(Connection& connection) {
    return newest(connection.ask_entries("SELECT hash FROM taken_order ORDER BY id DESC LIMIT 1"));
}

Hash records_head(Connection& connection) {
    return newest(connection.ask_entries("SELECT hash FROM quote_record ORDER BY id DESC LIMIT 1"));
}

}  // namespace flutebook::ledger
