#include "ledger/reading/entry_search.hpp"

#include "ledger/store/connection.hpp"
#include "ledger/store/names.hpp"
#include "ledger/writing/chain.hpp"

namespace flutebook::ledger {

namespace {

constexpr std::int64_t any_name = -1, unknown_name = -2;

std::int64_t wanted_name(Database& books, const std::optional<std::string>& name) {
    if (!name) return any_name;
    return find_name(books, *name).value_or(unknown_name);
}

// The names stand in the places 3 to 7; -1 is any.
constexpr const char* search_sql =
    "SELECT e.id, k.text, e.ref, e.day, s.text, c.text, o.text, e.note, w.text, e.reverses, "
    "(SELECT r.id FROM entry AS r WHERE r.reverses = e.id), "
    "(SELECT coalesce(sum(m.grams), 0) FROM movement AS m WHERE m.id BETWEEN e.id * 1000 AND e.id * 1000 + 999 "
    "AND m.cause <> 0 AND (?7 = -1 OR m.cause = ?7)), "
    "(SELECT coalesce(sum(x.grams), 0) FROM expected AS x WHERE x.id BETWEEN e.id * 1000 AND e.id * 1000 + 999 "
    "AND (?7 = -1 OR x.cause = ?7)) "
    "FROM entry AS e JOIN name AS k ON k.id = e.kind JOIN name AS s ON s.id = e.shift "
    "JOIN name AS c ON c.id = e.centre JOIN name AS o ON o.id = e.order_ JOIN name AS w ON w.id = e.who "
    "WHERE e.month = ?1 AND e.id > ?2 AND (?3 = -1 OR e.kind = ?3) AND (?4 = -1 OR e.centre = ?4) "
    "AND (?5 = -1 OR e.shift = ?5) AND (?6 = -1 OR e.order_ = ?6) AND (?7 = -1 "
    "OR EXISTS (SELECT 1 FROM movement AS m WHERE m.id BETWEEN e.id * 1000 AND e.id * 1000 + 999 AND m.cause = ?7) "
    "OR EXISTS (SELECT 1 FROM expected AS x WHERE x.id BETWEEN e.id * 1000 AND e.id * 1000 + 999 AND x.cause = ?7)) "
    "ORDER BY e.id LIMIT ?8";

FoundEntry read_found(const Statement& row) {
    FoundEntry entry;
    entry.number = row.number(0);
    entry.kind = row.text(1);
    entry.ref = row.text(2);
    entry.date = date_of(row.number(3));
    entry.shift = row.text(4);
    entry.centre = row.text(5);
    entry.order = row.text(6);
    entry.note = row.text(7);
    entry.who = row.text(8);
    if (!row.is_nothing(9)) entry.reverses = row.number(9);
    if (!row.is_nothing(10)) entry.reversed_by = row.number(10);
    entry.lost = Grams::of(row.number(11));
    entry.expected = Grams::of(row.number(12));
    return entry;
}

}  // namespace

FoundEntries find_entries(const Store& store, const EntrySearch& search) {
    auto& books = store.connection().books();
    Statement rows(books, search_sql);
    rows.bind(1, to_number(search.month)).bind(2, search.after);
    rows.bind(3, wanted_name(books, search.kind)).bind(4, wanted_name(books, search.centre));
    rows.bind(5, wanted_name(books, search.shift)).bind(6, wanted_name(books, search.order));
    rows.bind(7, wanted_name(books, search.cause)).bind(8, static_cast<std::int64_t>(search.limit) + 1);
    FoundEntries found{{}, false};
    while (rows.step()) {
        if (found.entries.size() == search.limit) {
            found.has_more = true;
            break;
        }
        found.entries.push_back(read_found(rows));
    }
    return found;
}

bool has_entries(const Store& store, const std::string& order) {
    auto& books = store.connection().books();
    const auto name = find_name(books, order);
    if (!name || order.empty()) return false;
    // Month by month, which is what the index goes by.
    Statement rows(books,
                   "WITH RECURSIVE held (month) AS (SELECT min(month) FROM entry UNION ALL "
                   "SELECT (SELECT min(month) FROM entry WHERE month > held.month) FROM held WHERE held.month IS NOT "
                   "NULL) SELECT 1 FROM held CROSS JOIN entry AS e ON e.month = held.month AND e.order_ = ? LIMIT 1");
    rows.bind(1, *name);
    return rows.step();
}

}  // namespace flutebook::ledger
