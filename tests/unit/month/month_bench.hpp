// What a test of months stands on: a ledger that is never on disk, and documents that are one movement each, so that
// every figure can be worked out by hand.
#pragma once

#include <string>
#include <vector>

#include "host/plant/plant.hpp"
#include "host/services/closing/close.hpp"
#include "host/services/closing/month.hpp"
#include "host/services/posting/reverse.hpp"
#include "ledger/writing/posting.hpp"

namespace flutebook::fixture {

[[nodiscard]] ledger::Month month_of(int year, unsigned month);

/// A small plant's ledger. Days are of the month that stands in `month`; masses in kg, money in the currency.
class MonthBench {
public:
    MonthBench();

    plant::Plant plant;
    ledger::Store store;
    ledger::Month month = month_of(2026, 10);
    int day = 15;
    ledger::Date today = std::chrono::year(2026) / 12 / 31;  // by the machine's clock
    month::EmptyMonths empty_months = month::EmptyMonths::refuse;
    std::string shift, order, board;  // of the documents to come

    /// Posts one movement; its entry's number. The entry's centre is the machine, or the account it leaves.
    std::int64_t move(const std::string& from, const std::string& to, const std::string& material, double kg,
                      double money = 0, const std::string& cause = "");
    std::int64_t paper(const std::string& corrugator, const std::string& code, double kg, double money);
    std::int64_t adhesive(const std::string& corrugator, double kg, double money);
    std::int64_t lose(const std::string& centre, const std::string& material, const std::string& cause, double kg);
    /// energy, system or waste-management.
    std::int64_t cost(const std::string& centre, const std::string& of_class, double money);
    std::int64_t expect(const std::string& centre, const std::string& cause, double kg);
    std::int64_t count(const std::string& account, const std::string& material, double kg);
    /// The count with which an account begins.
    std::int64_t open(const std::string& account, const std::string& material, double kg, double money);

    [[nodiscard]] month::MonthAccount account() { return account(month); }
    [[nodiscard]] month::MonthAccount account(ledger::Month of);
    answers::CloseAnswer close(const std::string& why = "");
    /// What a close is refused with, a line each; empty where it was closed.
    [[nodiscard]] std::vector<std::string> refusal(const std::string& why = "");

private:
    std::int64_t post(ledger::Draft draft);
    [[nodiscard]] ledger::Draft draft(const std::string& centre);

    std::int64_t next_ = 1;
};

/// What an account says of a cause, a centre, in kg; 0 where it says nothing.
[[nodiscard]] double lost_kg(const month::MonthAccount& account, const std::string& cause);
[[nodiscard]] double expected_kg(const month::MonthAccount& account, const std::string& cause);
[[nodiscard]] double waste_cost(const month::MonthAccount& account, const std::string& cause);
/// The test fails where there is no such centre.
[[nodiscard]] month::CentreAccount centre(const month::MonthAccount& account, const std::string& code);

/// Both sides of both balances, to the gram and the ten-thousandth.
[[nodiscard]] bool balances(const month::MonthAccount& account);

/// Everything that an account says, to compare two of them.
[[nodiscard]] std::string told(const month::MonthAccount& account);

}  // namespace flutebook::fixture
