#include "ledger/reading/entries.hpp"

#include "ledger/store/connection.hpp"
#include "ledger/store/names.hpp"
#include "ledger/writing/chain.hpp"

namespace flutebook::ledger {

namespace {

void read_movements(Connection& connection, Entry& entry) {
    auto row = connection.ask_entries(
        "SELECT f.text, t.text, m.text, c.text, grams, money FROM movement "
        "JOIN name AS f ON f.id = from_account JOIN name AS t ON t.id = to_account "
        "JOIN name AS m ON m.id = material JOIN name AS c ON c.id = cause "
        "WHERE movement.id BETWEEN ?1 * 1000 AND ?1 * 1000 + 999 ORDER BY movement.id");
    row->bind(1, entry.number);
    while (row->step())
        entry.draft.movements.push_back({row->text(0), row->text(1), row->text(2), row->text(3),
                                         Grams::of(row->number(4)), Money::of_ten_thousandths(row->number(5))});
}

void read_expected(Connection& connection, Entry& entry) {
    auto row = connection.ask_entries(
        "SELECT c.text, grams FROM expected JOIN name AS c ON c.id = cause "
        "WHERE expected.id BETWEEN ?1 * 1000 AND ?1 * 1000 + 999 ORDER BY expected.id");
    row->bind(1, entry.number);
    while (row->step()) entry.draft.expected.push_back({row->text(0), Grams::of(row->number(1))});
}

void read_count(Connection& connection, Entry& entry) {
    auto row = connection.ask_entries(
        "SELECT a.text, m.text, grams, money FROM stock_count JOIN name AS a ON a.id = account "
        "JOIN name AS m ON m.id = material WHERE entry = ?");
    row->bind(1, entry.number);
    if (!row->step()) return;
    entry.draft.count = Count{row->text(0), row->text(1), Grams::of(row->number(2)), std::nullopt};
    if (!row->is_nothing(3)) entry.draft.count->value = Money::of_ten_thousandths(row->number(3));
}

std::optional<Entry> read_entry(Connection& connection, std::int64_t number) {
    Entry entry;
    {
        auto row = connection.ask_entries(
            "SELECT k.text, e.ref, e.content, e.day, s.text, c.text, o.text, b.text, e.note, w.text, e.written, "
            "e.reverses, (SELECT r.id FROM entry AS r WHERE r.reverses = e.id), e.hash, e.clock FROM entry AS e "
            "JOIN name AS k ON k.id = e.kind JOIN name AS s ON s.id = e.shift JOIN name AS c ON c.id = e.centre "
            "JOIN name AS o ON o.id = e.order_ JOIN name AS b ON b.id = e.board JOIN name AS w ON w.id = e.who "
            "WHERE e.id = ?");
        row->bind(1, number);
        if (!row->step()) return std::nullopt;
        entry.number = number;
        auto& draft = entry.draft;
        draft.kind = row->text(0);
        draft.ref = row->text(1);
        draft.content = row->text(2);
        draft.date = date_of(row->number(3));
        draft.shift = row->text(4);
        draft.centre = row->text(5);
        draft.order = row->text(6);
        draft.board = row->text(7);
        draft.note = row->text(8);
        entry.who = row->text(9);
        entry.when = std::chrono::sys_seconds(std::chrono::seconds(row->number(10)));
        if (!row->is_nothing(11)) entry.reverses = row->number(11);
        if (!row->is_nothing(12)) entry.reversed_by = row->number(12);
        if (!row->is_nothing(14)) entry.clock = std::chrono::sys_seconds(std::chrono::seconds(row->number(14)));
        entry.hash = to_hex(from_bytes(row->view(13)).value_or(Hash{}));
    }
    read_movements(connection, entry);
    read_expected(connection, entry);
    read_count(connection, entry);
    return entry;
}

// Of an entry that is known to be there: where it cannot be read, a name of its is gone.
Entry expect_entry(Connection& connection, std::int64_t number) {
    auto entry = read_entry(connection, number);
    if (!entry)
        connection.give_up("entry " + std::to_string(number) + " cannot be read: the file is damaged; verify it");
    return *std::move(entry);
}

std::vector<std::int64_t> numbers(Statement& rows) {
    std::vector<std::int64_t> numbers;
    while (rows.step()) numbers.push_back(rows.number(0));
    return numbers;
}

}  // namespace

std::optional<Entry> find_entry(const Store& store, std::int64_t number) {
    return read_entry(store.connection(), number);
}

std::optional<Entry> find_entry(const Store& store, const std::string& kind, const std::string& ref) {
    std::int64_t number = 0;
    {
        auto row = store.connection().ask_entries(
            "SELECT id FROM entry WHERE kind = (SELECT id FROM name WHERE text = ?) AND ref = ?");
        row->bind(1, kind).bind(2, ref);
        if (!row->step()) return std::nullopt;
        number = row->number(0);
    }
    return expect_entry(store.connection(), number);
}

std::vector<Entry> entries_of_order(const Store& store, const std::string& order) {
    auto& books = store.connection().books();
    const auto name = find_name(books, order);
    if (!name || order.empty()) return {};
    // Month by month, which is what the index goes by.
    Statement rows(
        books,
        "WITH RECURSIVE held (month) AS (SELECT min(month) FROM entry UNION ALL "
        "SELECT (SELECT min(month) FROM entry WHERE month > held.month) FROM held WHERE held.month IS NOT NULL) "
        "SELECT e.id FROM held CROSS JOIN entry AS e ON e.month = held.month AND e.order_ = ? ORDER BY e.id");
    rows.bind(1, *name);
    std::vector<Entry> entries;
    for (const auto number : numbers(rows)) entries.push_back(expect_entry(store.connection(), number));
    return entries;
}

void visit_entries(const Store& store, Month month, const std::function<void(const Entry&)>& visit) {
    Statement rows(store.connection().books(), "SELECT id FROM entry WHERE month = ? ORDER BY id");
    rows.bind(1, to_number(month));
    while (rows.step()) visit(expect_entry(store.connection(), rows.number(0)));
}

void visit_late_reversals(const Store& store, Month month, const std::function<void(const Entry&)>& visit) {
    Statement rows(store.connection().books(),
                   "SELECT e.id FROM entry AS e JOIN entry AS u ON u.id = e.reverses "
                   "WHERE e.reverses IS NOT NULL AND e.month = ?1 AND u.month < ?1 ORDER BY e.id");
    rows.bind(1, to_number(month));
    while (rows.step()) visit(expect_entry(store.connection(), rows.number(0)));
}

void visit_noted(const Store& store, Month month, const std::function<void(const Entry&)>& visit) {
    Statement rows(store.connection().books(),
                   "SELECT id FROM entry WHERE month = ? AND (reverses IS NOT NULL OR note <> '') ORDER BY id");
    rows.bind(1, to_number(month));
    while (rows.step()) visit(expect_entry(store.connection(), rows.number(0)));
}

void visit_contents(const Store& store, Month month,
                    const std::function<void(const std::string&, const std::string&)>& visit) {
    Statement rows(store.connection().books(),
                   "SELECT k.text, e.content FROM entry AS e JOIN name AS k ON k.id = e.kind "
                   "WHERE e.month = ? AND e.reverses IS NULL "
                   "AND NOT EXISTS (SELECT 1 FROM entry AS r WHERE r.reverses = e.id) ORDER BY e.id");
    rows.bind(1, to_number(month));
    while (rows.step()) visit(rows.text(0), rows.text(1));
}

std::vector<Grams> latest_masses(const Store& store, const std::string& from, int most) {
    auto& books = store.connection().books();
    const auto name = find_name(books, from);
    if (!name) return {};
    Statement rows(books, "SELECT grams FROM movement WHERE from_account = ? AND grams > 0 ORDER BY id DESC LIMIT ?");
    rows.bind(1, *name).bind(2, most);
    std::vector<Grams> masses;
    while (rows.step()) masses.push_back(Grams::of(rows.number(0)));
    return masses;
}

std::optional<PricedMovement> last_priced(const Store& store, const std::string& from, const std::string& to,
                                          const std::string& material, Date date) {
    auto row = store.connection().ask_entries(
        "SELECT v.entry, v.day, v.grams, v.money FROM movement AS v WHERE v.cause = 0 AND v.money <> 0 "
        "AND v.from_account = (SELECT id FROM name WHERE text = ?) AND v.to_account = (SELECT id FROM name WHERE text "
        "= ?) "
        "AND v.material = (SELECT id FROM name WHERE text = ?) AND v.day <= ? AND v.grams > 0 "
        "AND (SELECT reverses FROM entry WHERE id = v.entry) IS NULL "
        "AND NOT EXISTS (SELECT 1 FROM entry WHERE reverses = v.entry) ORDER BY v.day DESC, v.id DESC LIMIT 1");
    row->bind(1, from).bind(2, to).bind(3, material).bind(4, to_number(date));
    if (!row->step()) return std::nullopt;
    return PricedMovement{row->number(0), date_of(row->number(1)), Grams::of(row->number(2)),
                          Money::of_ten_thousandths(row->number(3))};
}

bool has_moved(const Store& store, const std::string& account, Date by, const std::string& except_from) {
    auto& books = store.connection().books();
    const auto name = find_name(books, account);
    if (!name) return false;
    const auto except = find_name(books, except_from).value_or(-1);
    // The totals say in which months to look; what was reversed still stands in them.
    Statement months(
        books,
        "SELECT DISTINCT month FROM month_flow WHERE month <= ?1 AND (from_account = ?2 OR to_account = ?2) "
        "AND from_account <> ?3 ORDER BY month");
    Statement moved(books,
                    "SELECT 1 FROM entry AS e JOIN movement AS m ON m.id BETWEEN e.id * 1000 AND e.id * 1000 + 999 "
                    "WHERE e.month = ?1 AND e.day <= ?2 AND (m.from_account = ?3 OR m.to_account = ?3) "
                    "AND m.from_account <> ?4 AND e.reverses IS NULL "
                    "AND NOT EXISTS (SELECT 1 FROM entry WHERE reverses = e.id) LIMIT 1");
    months.bind(1, to_number(by) / 100).bind(2, *name).bind(3, except);
    moved.bind(2, to_number(by)).bind(3, *name).bind(4, except);
    while (months.step()) {
        moved.bind(1, months.number(0));
        if (moved.step()) return true;
        moved.reset();
    }
    return false;
}

std::optional<Head> head(const Store& store) {
    auto row = store.connection().ask_entries("SELECT id, hash FROM entry ORDER BY id DESC LIMIT 1");
    if (!row->step()) return std::nullopt;
    return Head{row->number(0), to_hex(from_bytes(row->view(1)).value_or(Hash{}))};
}

}  // namespace flutebook::ledger
