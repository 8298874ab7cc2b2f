#include "ledger/writing/totals.hpp"

#include <algorithm>
#include <vector>

namespace flutebook::ledger {

namespace {

// Written away beyond this, so that memory stays flat.
constexpr std::size_t most_held = 50000;

}  // namespace

template <std::size_t Size>
std::size_t Totals::KeyHash<Size>::operator()(const std::array<std::int64_t, Size>& key) const {
    std::uint64_t hash = 0;
    for (const auto part : key) {
        hash = (hash ^ static_cast<std::uint64_t>(part)) * 0x9E3779B97F4A7C15U;
        hash ^= hash >> 32U;
    }
    return hash;
}

Totals::Totals(Database& database)
    : database_(database),
      add_flow_(
          database,
          "INSERT INTO month_flow VALUES (?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT DO UPDATE SET movements = movements + "
          "excluded.movements, grams = grams + excluded.grams, money = money + excluded.money"),
      add_detail_(
          database,
          "INSERT INTO month_detail VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT DO UPDATE SET movements = "
          "movements + excluded.movements, grams = grams + excluded.grams, money = money + excluded.money"),
      add_expected_(
          database,
          "INSERT INTO month_expected VALUES (?, ?, ?, ?, ?, ?, ?) ON CONFLICT DO UPDATE SET losses = losses + "
          "excluded.losses, grams = grams + excluded.grams") {}

void Totals::grow(TotalSum& sum, std::int64_t grams, std::int64_t money) const {
    sum.movements += 1;
    if (__builtin_add_overflow(sum.grams, grams, &sum.grams) || __builtin_add_overflow(sum.money, money, &sum.money))
        throw LedgerError(LedgerError::Kind::refused,
                          database_.file() + ": a month's total would be too large to store; nothing was stored");
}

void Totals::add(const EntryKeys& entry, const MovementKeys& movement, std::int64_t grams, std::int64_t money) {
    grow(flows_[{entry.month, movement.from, movement.to, movement.material, movement.cause}], grams, money);
    grow(details_[{entry.month, entry.centre, entry.shift, entry.board, movement.from, movement.to, movement.cause}],
         grams, money);
    write_when_many();
}

void Totals::add_expected(const EntryKeys& entry, std::int64_t cause, std::int64_t grams) {
    grow(expected_[{entry.month, entry.centre, entry.shift, entry.board, cause}], grams, 0);
    write_when_many();
}

void Totals::write_when_many() {
    if (flows_.size() + details_.size() + expected_.size() > most_held) write();
}

// In the order of their keys, which is the order of the table: neighbours in the file are written together.
template <std::size_t Size>
void Totals::write(Sums<Size>& sums, Statement& statement, With with) {
    std::vector<std::pair<std::array<std::int64_t, Size>, TotalSum>> rows(sums.begin(), sums.end());
    std::sort(rows.begin(), rows.end(), [](const auto& left, const auto& right) { return left.first < right.first; });
    for (const auto& [key, sum] : rows) {
        int parameter = 0;
        for (const auto part : key) statement.bind(++parameter, part);
        statement.bind(++parameter, sum.movements);
        statement.bind(++parameter, sum.grams);
        if (with == With::mass_and_money) statement.bind(++parameter, sum.money);
        statement.run();
    }
    sums.clear();
}

void Totals::write() {
    write(flows_, add_flow_, With::mass_and_money);
    write(details_, add_detail_, With::mass_and_money);
    write(expected_, add_expected_, With::mass);
}

void Totals::forget() {
    flows_.clear();
    details_.clear();
    expected_.clear();
}

}  // namespace flutebook::ledger
