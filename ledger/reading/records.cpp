#include "ledger/reading/records.hpp"

#include <fmt/format.h>

#include "ledger/store/connection.hpp"

namespace flutebook::ledger {

namespace {

std::vector<QuoteAttribute> attributes_of_record(Connection& connection, std::int64_t record) {
    auto rows = connection.ask_entries(
        "SELECT n.text, a.text, a.number FROM quote_attribute AS a JOIN name AS n ON n.id = a.name "
        "WHERE a.id BETWEEN ?1 * 1000 AND ?1 * 1000 + 999 ORDER BY a.id");
    rows->bind(1, record);
    std::vector<QuoteAttribute> attributes;
    while (rows->step()) {
        QuoteAttribute attribute{rows->text(0), rows->number(2)};
        if (!rows->is_nothing(1)) attribute.value = rows->text(1);
        attributes.push_back(std::move(attribute));
    }
    return attributes;
}

}  // namespace

std::vector<QuoteRecord> records_of(const Store& store, const std::string& quote) {
    const auto id = parse_quote_number(quote);
    if (!id) return {};
    auto& connection = store.connection();
    std::vector<QuoteRecord> records;
    auto rows = connection.ask_entries(
        "SELECT r.id, k.text, w.text, r.written FROM quote_record AS r JOIN name AS k ON k.id = r.kind "
        "JOIN name AS w ON w.id = r.who WHERE r.quote = ? ORDER BY r.id");
    rows->bind(1, *id);
    while (rows->step()) {
        QuoteRecord record;
        record.number = rows->number(0);
        record.kind = rows->text(1);
        record.attributes = attributes_of_record(connection, record.number);
        record.who = rows->text(2);
        record.when = std::chrono::sys_seconds(std::chrono::seconds(rows->number(3)));
        records.push_back(std::move(record));
    }
    return records;
}

std::vector<std::string> quotes_without(const Store& store, const std::string& kind) {
    auto& connection = store.connection();
    {
        // The usual case costs a count and no search of each quote.
        auto counts = connection.ask_entries(
            "SELECT (SELECT count(*) FROM quote) = (SELECT count(DISTINCT quote) FROM quote_record "
            "WHERE kind = (SELECT id FROM name WHERE text = ?))");
        counts->bind(1, kind);
        if (counts->step() && counts->number(0) == 1) return {};
    }
    auto rows = connection.ask_entries(
        "SELECT q.id FROM quote AS q WHERE NOT EXISTS (SELECT 1 FROM quote_record AS r WHERE r.quote = q.id AND "
        "r.kind = (SELECT id FROM name WHERE text = ?)) ORDER BY q.id");
    rows->bind(1, kind);
    std::vector<std::string> numbers;
    while (rows->step()) numbers.push_back(quote_number(rows->number(0)));
    return numbers;
}

}  // namespace flutebook::ledger
