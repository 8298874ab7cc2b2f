#include "ledger/writing/record_writer.hpp"

#include <fmt/format.h>

#include <optional>
#include <set>

#include "ledger/store/parts.hpp"
#include "ledger/writing/draft_check.hpp"
#include "ledger/writing/saved_entry.hpp"

namespace flutebook::ledger {

namespace {

constexpr std::size_t most_attributes = 1000;

void check_record(const Connection& connection, const std::string& whose, const QuoteRecordDraft& record) {
    if (record.kind.empty() || record.attributes.empty())
        connection.refuse(whose + ": a record without kind or content");
    if (record.attributes.size() > most_attributes)
        connection.refuse(fmt::format("{}: a record has too many attributes: found {}; at most {} can be stored", whose,
                                      record.attributes.size(), most_attributes));
    if (const auto fault = fault_of_name("a record's kind", record.kind)) connection.refuse(whose + ": " + *fault);
    std::set<std::string> names;
    for (const auto& [name, value] : record.attributes) {
        if (name.empty()) connection.refuse(whose + ": an attribute has no name");
        if (const auto fault = fault_of_name("an attribute's name", name)) connection.refuse(whose + ": " + *fault);
        if (!names.insert(name).second) connection.refuse(fmt::format("{}: has two attributes `{}`", whose, name));
        const auto* text = std::get_if<std::string>(&value);
        if (text == nullptr) continue;
        if (const auto fault = fault_of_note(fmt::format("its attribute `{}`", name), *text))
            connection.refuse(whose + ": " + *fault);
    }
}

std::int64_t newest_record(Connection& connection) {
    auto row = connection.ask_entries("SELECT coalesce(max(id), 0) FROM quote_record");
    row->step();
    return row->number(0);
}

void write_attributes(ChainText& text, const std::vector<QuoteAttribute>& attributes) {
    text.number(static_cast<std::int64_t>(attributes.size()));
    for (const auto& [name, value] : attributes) {
        const auto* words = std::get_if<std::string>(&value);
        text.text(name);
        text.number(words == nullptr ? 1 : 0);
        if (words == nullptr)
            text.number(std::get<std::int64_t>(value));
        else
            text.text(*words);
    }
}

void add_attributes(Connection& connection, std::int64_t record, std::int64_t quote,
                    const std::vector<QuoteAttribute>& attributes) {
    auto line = record * 1000;
    for (const auto& [name, value] : attributes) {
        const auto name_number = connection.entry_writer().names().number_of(name);
        auto row = connection.ask_entries("INSERT OR ROLLBACK INTO quote_attribute VALUES (?, ?, ?, ?, ?)");
        row->bind(1, line++).bind(2, quote).bind(3, name_number);
        if (const auto* text = std::get_if<std::string>(&value))
            row->bind(4, *text).bind_nothing(5);
        else
            row->bind_nothing(4).bind(5, std::get<std::int64_t>(value));
        row->run();
    }
}

std::int64_t expect_saved_quote(Connection& connection, const std::string& number) {
    const auto quote = parse_quote_number(number);
    if (quote) {
        auto row = connection.ask_entries("SELECT 1 FROM quote WHERE id = ?");
        row->bind(1, *quote);
        if (row->step()) return *quote;
    }
    connection.refuse(
        fmt::format("{}: no such quote: found `{}`; name one that was saved, like Q000001", connection.file(), number));
}

}  // namespace

void add_record(Connection& connection, std::int64_t quote, const QuoteRecordDraft& record, const Actor& actor) {
    check_record(connection, "quote " + quote_number(quote), record);
    const auto number = newest_record(connection) + 1;
    const auto when = actor.when.time_since_epoch().count();
    ChainText text;
    text.begin(records_head(connection), "record 1");
    text.number(number);
    text.number(quote);
    text.text(record.kind);
    text.text(actor.who);
    text.number(when);
    write_attributes(text, record.attributes);
    const auto hash = text.hash();
    auto& names = connection.entry_writer().names();
    const auto kind = names.number_of(record.kind);
    const auto who = names.number_of(actor.who);
    auto row = connection.ask_entries("INSERT OR ROLLBACK INTO quote_record VALUES (?, ?, ?, ?, ?, ?)");
    row->bind(1, number).bind(2, quote).bind(3, kind).bind(4, who).bind(5, when);
    row->bind_bytes(6, bytes_of(hash)).run();
    add_attributes(connection, number, quote, record.attributes);
}

void add_records(Store& store, std::span<const RecordOfQuote> records, const std::string& who) {
    auto& connection = store.connection();
    if (const auto fault = fault_of_name("the writer's name", who)) connection.refuse(*fault);
    Transaction transaction(connection);
    for (const auto& [quote, record] : records)
        add_record(connection, expect_saved_quote(connection, quote), record, {who, connection.clock().now()});
    record_saved(connection, who);
    transaction.commit();
}

bool can_be_attribute(const std::string& text) {
    return !fault_of_note("it", text);
}

}  // namespace flutebook::ledger
