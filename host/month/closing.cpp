#include "host/month/closing.hpp"

#include <fmt/format.h>

#include <cmath>

#include "host/base/date.hpp"
#include "host/production/accounts.hpp"

namespace flutebook::month {

namespace {

using production::account_kind;
using Kind = production::AccountKind;

bool is_over(ledger::Month month, const ClosingFacts& facts) {
    return facts.today > last_day(month);
}

// A machine that was not counted stands empty, so what its books hold on the last day is what is unexplained.
bool lacks_count(const CentreAccount& centre, double tolerance) {
    const auto book_kg = std::abs(centre.unexplained().to_kg());
    return !centre.is_counted && book_kg > tolerance * std::max(0.0, centre.in.to_kg());
}

std::string uncounted_text(const CentreAccount& centre, ledger::Month month, double tolerance) {
    const auto share = share_of(centre.unexplained(), centre.in);
    return fmt::format(
        "{} was not counted on {}: found {:.3f} kg in its books, {}; post a count of that day, of 0 kg where it was "
        "empty",
        centre.centre, base::to_string(last_day(month)), centre.unexplained().to_kg(),
        share ? fmt::format("{:.2f} % of its intake, above the tolerance of {:.2f} %", std::abs(*share) * 100,
                            tolerance * 100)
              : "and no intake");
}

std::string empty_text(const std::vector<ledger::Month>& months) {
    const auto which = months.size() == 1 ? text_of(months.front())
                                          : fmt::format("{} months, from {} to {}", months.size(),
                                                        text_of(months.front()), text_of(months.back()));
    return fmt::format("nothing was posted in {}: post its documents, or close with --empty-months where nothing ran",
                       which);
}

void add_below_zero(std::vector<std::string>& lines, ledger::Month month, const std::string& name, Grams close) {
    if (close < Grams())
        lines.push_back(fmt::format("{} ends {} below zero: found {:.3f} kg; count it, or post what is missing", name,
                                    text_of(month), close.to_kg()));
}

}  // namespace

std::vector<std::string> closing_conditions(const MonthAccount& account, const ClosingFacts& facts, double tolerance,
                                            EmptyMonths empty) {
    const auto month = account.month;
    std::vector<std::string> lines;
    if (!is_over(month, facts) && !facts.is_followed)
        lines.push_back(
            fmt::format("{} is not over: found {} on this computer's clock, and no production of a later "
                        "month; close it after {}",
                        text_of(month), base::to_string(facts.today), base::to_string(last_day(month))));
    for (const auto before : facts.open_before)
        lines.push_back(fmt::format("{} is still open; close it before {}", text_of(before), text_of(month)));
    if (!facts.empty.empty() && empty == EmptyMonths::refuse) lines.push_back(empty_text(facts.empty));
    for (const auto& centre : account.centres)
        if (lacks_count(centre, tolerance)) lines.push_back(uncounted_text(centre, month, tolerance));
    for (const auto& centre : account.centres) add_below_zero(lines, month, centre.centre, centre.close);
    add_below_zero(lines, month, production::account::floor, account.floor.close);
    add_below_zero(lines, month, production::account::loose_scrap, account.loose_scrap.close);
    add_below_zero(lines, month, production::account::bale_yard, account.bale_yard.close);
    return lines;
}

std::string lagging_clock(ledger::Month month, const ClosingFacts& facts) {
    if (is_over(month, facts) || !facts.is_followed) return {};
    return fmt::format(
        "this computer's clock is behind the books: found {} on it, and production after {}; {} "
        "counts as over",
        base::to_string(facts.today), base::to_string(last_day(month)), text_of(month));
}

bool is_production(const ledger::Flow& flow) {
    const auto from = account_kind(flow.from), to = account_kind(flow.to);
    if (flow.mass <= Grams() || is_of_close(flow) || from == Kind::opening) return false;
    return from == Kind::machine || to == Kind::machine;
}

std::string text_of(ledger::Month month) {
    return fmt::format("{}-{:02}", static_cast<int>(month.year()), static_cast<unsigned>(month.month()));
}

}  // namespace flutebook::month
