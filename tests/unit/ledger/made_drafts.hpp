// Drafts as a plant's documents would come to: made from a seed, or one by one for examples.
#pragma once

#include <cstdint>
#include <random>
#include <string>
#include <vector>

#include "ledger/store/clock.hpp"
#include "ledger/values/entry.hpp"

namespace flutebook::fixture {

/// 2026-10-15 as day(2026, 10, 15).
[[nodiscard]] ledger::Date day(int year, unsigned month, unsigned day);
[[nodiscard]] ledger::Month month(int year, unsigned month);

/// A clock that stands still until it is set.
class SetClock : public ledger::Clock {
public:
    SetClock() = default;
    explicit SetClock(std::int64_t seconds) : seconds_(seconds) {}
    void set(std::int64_t seconds) { seconds_ = seconds; }
    [[nodiscard]] std::chrono::sys_seconds now() const override {
        return std::chrono::sys_seconds(std::chrono::seconds(seconds_));
    }

private:
    std::int64_t seconds_ = 1'792'000'000;  // in October 2026
};

/// Paper issued: paper-store -> C1.
[[nodiscard]] ledger::Draft paper_issue(const std::string& ref, ledger::Date date, std::int64_t kg,
                                        std::int64_t amount = 0, const std::string& paper = "KL135");
/// A run on the corrugator: adhesive in, board to the floor, scrap by cause, and what was expected.
[[nodiscard]] ledger::Draft corrugator_run(const std::string& ref, ledger::Date date, const std::string& order);
/// A count of the floor.
[[nodiscard]] ledger::Draft floor_count(const std::string& ref, ledger::Date date, std::int64_t kg);

/// Documents of a plant with two corrugators and three converters, over the days of some months: the same for the same
/// seed. Refs are numbered from `first`.
class DocumentStream {
public:
    explicit DocumentStream(std::uint64_t seed, int months = 2, std::int64_t first = 1)
        : random_(seed), months_(months), next_(first) {}

    [[nodiscard]] ledger::Draft next();
    [[nodiscard]] std::vector<ledger::Draft> take(std::size_t count);

private:
    std::int64_t between(std::int64_t low, std::int64_t high);
    std::string one_of(const std::vector<std::string>& names);
    ledger::Date any_day();

    void fill_paper(ledger::Draft& draft);
    void fill_corrugator_run(ledger::Draft& draft);
    void fill_converter_run(ledger::Draft& draft);
    void fill_scrap(ledger::Draft& draft);
    void fill_count(ledger::Draft& draft);

    std::mt19937_64 random_;
    int months_;
    std::int64_t next_;
};

}  // namespace flutebook::fixture
