#include "ledger/reading/month.hpp"

#include <fmt/format.h>

#include "ledger/store/connection.hpp"
#include "ledger/writing/chain.hpp"

namespace flutebook::ledger {

namespace {

Grams grams(const Statement& row, int column) {
    return Grams::of(row.number(column));
}
Money money(const Statement& row, int column) {
    return Money::of_ten_thousandths(row.number(column));
}

std::vector<StandingCount> read_counts(Statement& rows) {
    std::vector<StandingCount> counts;
    while (rows.step()) {
        StandingCount one;
        one.entry = rows.number(0);
        one.date = date_of(rows.number(1));
        one.count = {rows.text(2), rows.text(3), grams(rows, 4), std::nullopt};
        if (!rows.is_nothing(5)) one.count.value = money(rows, 5);
        counts.push_back(one);
    }
    return counts;
}

// The column of the totals that an axis goes by; an order is only known to the entries.
std::string column_of(Axis axis) {
    switch (axis) {
        case Axis::centre:
            return "centre";
        case Axis::shift:
            return "shift";
        case Axis::board:
            return "board";
        case Axis::order:
            return "order_";
    }
    return {};
}

// One row a movement total, before it is summed by the axis.
std::string shares_source(Axis axis) {
    if (axis != Axis::order)
        return fmt::format(
            "SELECT {} AS of, centre, from_account, to_account, cause, movements, grams, money FROM "
            "month_detail WHERE month = ?1",
            column_of(axis));
    return "SELECT e.order_ AS of, e.centre, m.from_account, m.to_account, m.cause, 1 AS movements, m.grams, m.money "
           "FROM entry AS e JOIN movement AS m ON m.id BETWEEN e.id * 1000 AND e.id * 1000 + 999 WHERE e.month = ?1";
}

std::string expected_source(Axis axis) {
    if (axis != Axis::order)
        return fmt::format("SELECT {} AS of, centre, cause, grams FROM month_expected WHERE month = ?1",
                           column_of(axis));
    return "SELECT e.order_ AS of, e.centre, x.cause, x.grams FROM entry AS e JOIN expected AS x ON x.id BETWEEN e.id "
           "* "
           "1000 AND e.id * 1000 + 999 WHERE e.month = ?1";
}

}  // namespace

std::vector<Flow> flows(const Store& store, Month month) {
    Statement rows(store.connection().books(),
                   "SELECT f.text, t.text, m.text, c.text, movements, grams, money FROM month_flow "
                   "JOIN name AS f ON f.id = from_account JOIN name AS t ON t.id = to_account "
                   "JOIN name AS m ON m.id = material JOIN name AS c ON c.id = cause "
                   "WHERE month = ? ORDER BY f.text, t.text, m.text, c.text");
    rows.bind(1, to_number(month));
    std::vector<Flow> flows;
    while (rows.step())
        flows.push_back(
            {rows.text(0), rows.text(1), rows.text(2), rows.text(3), rows.number(4), grams(rows, 5), money(rows, 6)});
    return flows;
}

std::vector<Balance> balances_before(const Store& store, Month month) {
    // What the latest closed month ended with, and what moved since: the time does not grow with the months before.
    Statement rows(
        store.connection().books(),
        "WITH base (month) AS (SELECT coalesce(max(month), 0) FROM seal WHERE month < ?1), "
        "part (account, material, grams, money) AS ("
        "SELECT account, material, grams, money FROM seal_stock WHERE month = (SELECT month FROM base) "
        "UNION ALL SELECT to_account, material, grams, money FROM month_flow "
        "WHERE month > (SELECT month FROM base) AND month < ?1 "
        "UNION ALL SELECT from_account, material, -grams, -money FROM month_flow "
        "WHERE month > (SELECT month FROM base) AND month < ?1), "
        "held AS (SELECT account, material, sum(grams) AS grams, sum(money) AS money FROM part GROUP BY 1, 2) "
        "SELECT a.text, m.text, grams, money FROM held JOIN name AS a ON a.id = account "
        "JOIN name AS m ON m.id = material WHERE grams <> 0 OR money <> 0 ORDER BY a.text, m.text");
    rows.bind(1, to_number(month));
    std::vector<Balance> balances;
    while (rows.step()) balances.push_back({rows.text(0), rows.text(1), grams(rows, 2), money(rows, 3)});
    return balances;
}

std::vector<ExpectedLoss> expected_losses(const Store& store, Month month) {
    Statement rows(store.connection().books(),
                   "SELECT e.text, c.text, sum(grams) FROM month_expected JOIN name AS e ON e.id = centre "
                   "JOIN name AS c ON c.id = cause WHERE month = ? GROUP BY centre, cause ORDER BY e.text, c.text");
    rows.bind(1, to_number(month));
    std::vector<ExpectedLoss> losses;
    while (rows.step()) losses.push_back({rows.text(0), rows.text(1), grams(rows, 2)});
    return losses;
}

std::vector<StandingCount> counts(const Store& store, Month month) {
    // A count that was reversed in a later month still counts in its own, which may have been closed on it.
    Statement rows(store.connection().books(),
                   "SELECT s.entry, s.day, a.text, m.text, s.grams, s.money FROM stock_count AS s "
                   "JOIN name AS a ON a.id = s.account JOIN name AS m ON m.id = s.material "
                   "WHERE s.day BETWEEN ?1 * 100 AND ?1 * 100 + 99 AND NOT EXISTS (SELECT 1 FROM entry WHERE reverses "
                   "= s.entry AND month = ?1) "
                   "ORDER BY s.day, s.entry");
    rows.bind(1, to_number(month));
    return read_counts(rows);
}

std::vector<StandingCount> counts_of(const Store& store, const std::string& account) {
    Statement rows(store.connection().books(),
                   "SELECT s.entry, s.day, a.text, m.text, s.grams, s.money FROM stock_count AS s "
                   "JOIN name AS a ON a.id = s.account JOIN name AS m ON m.id = s.material "
                   "WHERE a.text = ?1 AND NOT EXISTS (SELECT 1 FROM entry WHERE reverses = s.entry) "
                   "ORDER BY s.day, s.entry");
    rows.bind(1, account);
    return read_counts(rows);
}

std::vector<Share> shares(const Store& store, Month month, Axis axis) {
    const auto sql =
        "SELECT o.text, e.text, f.text, t.text, c.text, sum(movements), sum(grams), sum(money) FROM (" +
        shares_source(axis) +
        ") JOIN name AS o ON o.id = of JOIN name AS e ON e.id = centre JOIN name AS f ON f.id = from_account "
        "JOIN name AS t ON t.id = to_account JOIN name AS c ON c.id = cause "
        "GROUP BY of, centre, from_account, to_account, cause "
        "ORDER BY o.text, e.text, f.text, t.text, c.text";
    Statement rows(store.connection().books(), sql.c_str());
    rows.bind(1, to_number(month));
    std::vector<Share> shares;
    while (rows.step())
        shares.push_back({rows.text(0), rows.text(1), rows.text(2), rows.text(3), rows.text(4), rows.number(5),
                          grams(rows, 6), money(rows, 7)});
    return shares;
}

std::vector<ExpectedShare> expected_shares(const Store& store, Month month, Axis axis) {
    const auto sql = "SELECT o.text, e.text, c.text, sum(grams) FROM (" + expected_source(axis) +
                     ") JOIN name AS o ON o.id = of JOIN name AS e ON e.id = centre JOIN name AS c ON c.id = cause "
                     "GROUP BY of, centre, cause ORDER BY o.text, e.text, c.text";
    Statement rows(store.connection().books(), sql.c_str());
    rows.bind(1, to_number(month));
    std::vector<ExpectedShare> shares;
    while (rows.step()) shares.push_back({rows.text(0), rows.text(1), rows.text(2), grams(rows, 3)});
    return shares;
}

std::vector<std::string> orders_in(const Store& store, Month month) {
    Statement rows(store.connection().books(),
                   "SELECT DISTINCT o.text FROM entry JOIN name AS o ON o.id = order_ WHERE month = ? AND o.text <> '' "
                   "ORDER BY o.text");
    rows.bind(1, to_number(month));
    std::vector<std::string> orders;
    while (rows.step()) orders.push_back(rows.text(0));
    return orders;
}

std::vector<Month> months(const Store& store) {
    // From month to month by the index, not over all entries.
    Statement rows(
        store.connection().books(),
        "WITH RECURSIVE held (month) AS (SELECT min(month) FROM entry UNION ALL "
        "SELECT (SELECT min(month) FROM entry WHERE month > held.month) FROM held WHERE held.month IS NOT NULL) "
        "SELECT month FROM held WHERE EXISTS (SELECT 1 FROM entry WHERE entry.month = held.month "
        "AND kind IS NOT (SELECT id FROM name WHERE text = 'saved'))");
    std::vector<Month> months;
    while (rows.step()) months.push_back(month_of(rows.number(0)));
    return months;
}

std::vector<Month> months_from_entry(const Store& store, std::int64_t first) {
    Statement rows(store.connection().books(), "SELECT DISTINCT month FROM entry WHERE id >= ? ORDER BY month");
    rows.bind(1, first);
    std::vector<Month> result;
    while (rows.step()) result.push_back(month_of(rows.number(0)));
    return result;
}

}  // namespace flutebook::ledger
