#include "ledger/reading/standing.hpp"

#include "ledger/store/connection.hpp"
#include "ledger/writing/chain.hpp"

namespace flutebook::ledger {

namespace {

// One row a cause of an entry.
constexpr const char* standing_rows =
    "SELECT e.id, o.text, b.text, e.content, c.text, sum(m.grams) FROM entry AS e "
    "JOIN movement AS m ON m.id BETWEEN e.id * 1000 AND e.id * 1000 + 999 AND m.from_account = e.centre "
    "JOIN name AS o ON o.id = e.order_ JOIN name AS b ON b.id = e.board JOIN name AS c ON c.id = m.cause "
    "WHERE e.month = ? AND e.kind = (SELECT id FROM name WHERE text = ?) AND e.reverses IS NULL "
    "AND NOT EXISTS (SELECT 1 FROM entry AS r WHERE r.reverses = e.id) GROUP BY e.id, m.cause ORDER BY e.id";

}  // namespace

void visit_standing(const Store& store, Month month, const std::string& kind,
                    const std::function<void(const StandingEntry&)>& visit) {
    Statement rows(store.connection().books(), standing_rows);
    rows.bind(1, to_number(month)).bind(2, kind);
    StandingEntry entry;
    std::int64_t number = 0;
    while (rows.step()) {
        if (rows.number(0) != number) {
            if (number != 0) visit(entry);
            number = rows.number(0);
            entry = {rows.text(1), rows.text(2), rows.text(3), {}};
        }
        entry.left[rows.text(4)] += Grams::of(rows.number(5));
    }
    if (number != 0) visit(entry);
}

}  // namespace flutebook::ledger
