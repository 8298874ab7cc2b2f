#include "host/month/excess.hpp"

namespace flutebook::month {

namespace {

struct Sale {
    Money revenue, handling;
    Grams sent, scrap;  // to mills; made

    void add(const MonthAccount& account) {
        revenue += account.revenue;
        handling += account.scrap_handling;
        sent += account.sent;
        scrap += account.loose_scrap.in;
    }
    [[nodiscard]] bool is_known() const { return sent > Grams() && revenue != Money(); }
    [[nodiscard]] double per_kg() const {
        const double handling_per_kg = scrap > Grams() ? handling.to_double() / scrap.to_kg() : 0;
        return revenue.to_double() / sent.to_kg() - handling_per_kg;
    }
};

double cash_per_kg(const MonthAccount& account, const CauseAccount& cause) {
    if (cause.actual != Grams()) return cause.cash.to_double() / cause.actual.to_kg();
    Money cash;
    for (const auto& item : account.causes) cash += item.cash;
    return account.lost() > Grams() ? cash.to_double() / account.lost().to_kg() : 0;
}

}  // namespace

ScrapValue scrap_value(const MonthAccount& account, const std::vector<MonthAccount>& year) {
    Sale month, twelve;
    month.add(account);
    if (month.is_known()) return {month.per_kg(), ScrapValue::Of::month};
    for (const auto& item : year) twelve.add(item);
    if (twelve.is_known()) return {twelve.per_kg(), ScrapValue::Of::twelve_months};
    return {};
}

namespace {

Money value_of(const MonthAccount& account, const CauseAccount& cause, Grams excess, const ScrapValue& scrap) {
    const double value = excess.to_kg() * (cash_per_kg(account, cause) - scrap.per_kg);
    return Money::rounded(value, 4).value_or(Money());
}

}  // namespace

Money excess_value(const MonthAccount& account, const CauseAccount& cause, const ScrapValue& scrap) {
    return value_of(account, cause, cause.excess(), scrap);
}

Money excess_value(const MonthAccount& account, const std::string& cause, Grams excess, const ScrapValue& scrap) {
    for (const auto& item : account.causes)
        if (item.cause == cause) return value_of(account, item, excess, scrap);
    return value_of(account, CauseAccount{}, excess, scrap);
}

Money excess_value(const MonthAccount& account, const ScrapValue& scrap) {
    Money sum;
    for (const auto& cause : account.causes) sum += excess_value(account, cause, scrap);
    return sum;
}

}  // namespace flutebook::month
