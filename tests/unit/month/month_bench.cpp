#include "tests/unit/month/month_bench.hpp"

#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <cmath>

#include "tests/support/small_plant.hpp"

namespace flutebook::fixture {

namespace {

Grams grams(double kg) {
    return Grams::of(std::llround(kg * 1000));
}

Money money_of(double amount) {
    return Money::of(amount, 1).value();
}

const month::CauseAccount* find(const month::MonthAccount& account, const std::string& cause) {
    for (const auto& caus : account.causes)
        if (caus.cause == cause) return &caus;
    return nullptr;
}

}  // namespace

ledger::Month month_of(int year, unsigned month) {
    return std::chrono::year(year) / std::chrono::month(month);
}

MonthBench::MonthBench() : plant(small_plant()), store(ledger::Store::in_memory()) {
    plant.balance_tolerance = 0.005;
}

ledger::Draft MonthBench::draft(const std::string& centre) {
    ledger::Draft draft;
    draft.kind = "row";
    draft.ref = fmt::format("R{}", next_++);
    draft.content = draft.ref;
    draft.date = month / std::chrono::day(static_cast<unsigned>(day));
    draft.shift = shift;
    draft.order = order;
    draft.board = board;
    draft.centre = centre;
    return draft;
}

std::int64_t MonthBench::post(ledger::Draft draft) {
    const auto batch = ledger::post(store, std::vector{std::move(draft)}, "mara");
    return std::get<ledger::Posted>(batch.added.front()).number;
}

std::int64_t MonthBench::move(const std::string& from, const std::string& to, const std::string& material, double kg,
                              double money, const std::string& cause) {
    const bool is_machine_behind = from.find("-store") != std::string::npos || from == "floor" || from == "costs";
    auto result = draft(is_machine_behind ? to : from);
    result.movements.push_back({from, to, material, cause, grams(kg), money_of(money)});
    return post(std::move(result));
}

std::int64_t MonthBench::paper(const std::string& corrugator, const std::string& code, double kg, double money) {
    return move("paper-store", corrugator, code, kg, money);
}

std::int64_t MonthBench::adhesive(const std::string& corrugator, double kg, double money) {
    return move("adhesive-store", corrugator, "adhesive", kg, money);
}

std::int64_t MonthBench::lose(const std::string& centre, const std::string& material, const std::string& cause,
                              double kg) {
    auto result = draft(centre);
    result.movements.push_back({centre, "loose-scrap", material, cause, grams(kg), {}});
    return post(std::move(result));
}

std::int64_t MonthBench::cost(const std::string& centre, const std::string& of_class, double money) {
    return move("costs", centre, of_class, 0, money);
}

std::int64_t MonthBench::expect(const std::string& centre, const std::string& cause, double kg) {
    auto result = draft(centre);
    result.expected.push_back({cause, grams(kg)});
    return post(std::move(result));
}

std::int64_t MonthBench::count(const std::string& account, const std::string& material, double kg) {
    auto result = draft(account);
    result.count = ledger::Count{account, material, grams(kg), std::nullopt};
    return post(std::move(result));
}

std::int64_t MonthBench::open(const std::string& account, const std::string& material, double kg, double money) {
    auto result = draft(account);
    result.count = ledger::Count{account, material, grams(kg), money_of(money)};
    result.movements.push_back({"opening", account, material, "", grams(kg), money_of(money)});
    return post(std::move(result));
}

month::MonthAccount MonthBench::account(ledger::Month of) {
    return services::MonthReader(plant, store).account(of);
}

answers::CloseAnswer MonthBench::close(const std::string& why) {
    return services::close(plant, store, {month, why, "mara", today, empty_months});
}

std::vector<std::string> MonthBench::refusal(const std::string& why) {
    try {
        static_cast<void>(close(why));
    } catch (const LedgerError& error) {
        CHECK(error.kind() == LedgerError::Kind::refused);
        return error.lines();
    }
    return {};
}

double lost_kg(const month::MonthAccount& account, const std::string& cause) {
    const auto* item = find(account, cause);
    return item == nullptr ? 0 : item->actual.to_kg();
}

double expected_kg(const month::MonthAccount& account, const std::string& cause) {
    const auto* item = find(account, cause);
    return item == nullptr ? 0 : item->expected.to_kg();
}

double waste_cost(const month::MonthAccount& account, const std::string& cause) {
    const auto* item = find(account, cause);
    return item == nullptr ? 0 : item->cost.to_double();
}

month::CentreAccount centre(const month::MonthAccount& account, const std::string& code) {
    for (const auto& item : account.centres)
        if (item.centre == code) return item;
    FAIL("no centre " << code);
    return {};
}

bool balances(const month::MonthAccount& account) {
    const bool mass = account.issued + account.adhesive + account.opening_stock() ==
                      account.product + account.lost() + account.unexplained() + account.closing_stock();
    const bool money = account.money_in + account.opening_cost ==
                       account.product_cost + account.waste_cost() + account.cost_beside() + account.closing_cost;
    return mass && money;
}

std::string told(const month::MonthAccount& account) {
    const auto both = [](Grams mass, Money money) {
        return fmt::format("{} g {} ", mass.count(), money.ten_thousandths());
    };
    std::string text = both(account.issued, account.money_in) + both(account.adhesive, account.opening_cost) +
                       both(account.product, account.product_cost) + both({}, account.closing_cost) +
                       both({}, account.unexplained_cost) + both({}, account.idle_cost) +
                       both({}, account.corrections_cost);
    for (const auto& caus : account.causes)
        text += "\n" + caus.cause + " " + both(caus.actual, caus.cost) + both(caus.expected, {});
    for (const auto& item : account.centres)
        text += "\n" + item.centre + " " + both(item.open, {}) + both(item.in, {}) + both(item.passed, {}) +
                both(item.lost, {}) + both(item.close, {});
    const auto& floor = account.floor;
    text += "\nfloor " + both(floor.open, floor.open_cost) + both(floor.made, {}) + both(floor.fed, {}) +
            both(floor.returned, {}) + both(floor.lost, {}) + both(floor.counted, {}) +
            both(floor.close, floor.close_cost);
    for (const auto* item : {&account.loose_scrap, &account.bale_yard})
        text += "\nscrap " + both(item->open, {}) + both(item->in, {}) + both(item->out, {}) + both(item->counted, {}) +
                both(item->close, {});
    for (const auto& item : account.closing)
        text += "\n" + item.account + " " + item.material + " " + both(item.mass, item.money);
    return text;
}

}  // namespace flutebook::fixture
