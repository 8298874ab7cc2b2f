// What holds for any month whatever: made from a seed, months long, with counts, reversals and closes among them.
#include <catch2/catch.hpp>
#include <random>

#include "ledger/proof/verify.hpp"
#include "tests/support/property.hpp"
#include "tests/unit/month/month_bench.hpp"

using namespace flutebook;
using namespace flutebook::fixture;

namespace {

// Documents of a plant with two corrugators and three converters, one after the other.
class Stream {
public:
    Stream(std::uint64_t seed, MonthBench& bench) : random_(seed), bench_(bench) {}

    void post_month(ledger::Month month) {
        bench_.month = month;
        for (int i = 0; i < 40; ++i) {
            bench_.day = whole(1, 28);
            const auto entry = post_one();
            if (whole(0, 9) == 0)
                static_cast<void>(services::reverse(bench_.store, {entry, "wrong row", "mara", std::nullopt}));
            else
                standing_.push_back(entry);
        }
        for (int i = 0; i < 8 && !earlier_.empty(); ++i) {
            const auto which = static_cast<std::size_t>(whole(0, static_cast<int>(earlier_.size()) - 1));
            const auto day = month / std::chrono::day(static_cast<unsigned>(whole(1, 28)));
            static_cast<void>(services::reverse(bench_.store, {earlier_[which], "found late", "mara", day}));
            earlier_.erase(earlier_.begin() + static_cast<std::ptrdiff_t>(which));
        }
        earlier_.insert(earlier_.end(), standing_.begin(), standing_.end());
        standing_.clear();
        bench_.day = 31;
        while (!(month / std::chrono::day(static_cast<unsigned>(bench_.day))).ok()) --bench_.day;
        bench_.count("C1", "KL140", whole(0, 1) == 0 ? kg() : 0);
        bench_.count("FG1", "board", whole(0, 2) == 0 ? kg() : 0);
        bench_.count("C2", "KL140", 0);
        for (const auto* machine : {"PR1", "DC1"}) bench_.count(machine, "board", 0);
        for (const auto* stock : {"floor", "loose-scrap", "bale-yard"})
            bench_.count(stock, std::string(stock) == "floor" ? "board" : "scrap", kg());
    }

private:
    int whole(int low, int high) { return std::uniform_int_distribution<int>(low, high)(random_); }
    double kg() { return whole(0, 5'000'000) / 1000.0; }
    double money() { return whole(0, 30'000'000) / 10000.0; }
    std::string any(const std::vector<std::string>& names) {
        return names[static_cast<std::size_t>(whole(0, static_cast<int>(names.size()) - 1))];
    }

    std::int64_t post_one() {
        const auto corrugator = any({"C1", "C2"}), converter = any({"PR1", "DC1", "FG1"});
        const auto paper = any({"KL140", "SC127"}), material = any({"KL140", "SC127", "adhesive"});
        switch (whole(0, 11)) {
            case 0:
            case 1:
                return bench_.paper(corrugator, paper, whole(0, 5) == 0 ? -kg() : kg(), money());
            case 2:
                return bench_.adhesive(corrugator, kg(), money());
            case 3:
                return bench_.move(corrugator, any({"floor", "finished"}), material, kg());
            case 4:
                return bench_.lose(corrugator, any({"KL140", "SC127", "adhesive", "paper"}),
                                   any({"side-trim", "roll-ends"}), kg());
            case 5:
                return bench_.move("floor", converter, "board", kg());
            case 6:
                return bench_.move(converter, any({"floor", "finished"}), "board", kg());
            case 7:
                return bench_.lose(any({"PR1", "DC1", "FG1", "floor", "finished"}), "board", any({"rejects", "damage"}),
                                   kg());
            case 8:
                return bench_.cost(any({"C1", "C2", "PR1", "FG1", "loose-scrap"}),
                                   any({"energy", "system", "waste-management"}), money());
            case 9:
                return bench_.expect(corrugator, "side-trim", kg());
            case 10:
                return bench_.count("floor", "board", kg());
            default:
                return bench_.move("loose-scrap", "bale-yard", "4.01.00", kg());
        }
    }

    std::mt19937_64 random_;
    MonthBench& bench_;
    std::vector<std::int64_t> standing_, earlier_;  // entries of this month, and of those before
};

}  // namespace

TEST_CASE(
    "whatever is posted, every month balances in mass and money, open or closed, and a close changes no account") {
    CHECK(holds_for_seeds(100, [](std::uint64_t seed) {
        MonthBench open, closed;
        Stream first(seed, open), second(seed, closed);
        for (int i = 0; i < 3; ++i) {
            const auto month = month_of(2026, 9) + std::chrono::months(i);
            first.post_month(month);
            second.post_month(month);
            const auto before = told(closed.account());
            RC_ASSERT(balances(closed.account()));
            static_cast<void>(closed.close("the seed says so"));
            RC_ASSERT(told(closed.account()) == before);
        }
        for (int i = 0; i < 3; ++i) {
            const auto month = month_of(2026, 9) + std::chrono::months(i);
            RC_ASSERT(told(open.account(month)) == told(closed.account(month)));
        }
        RC_ASSERT(ledger::verify(closed.store).holds());
    }));
}
