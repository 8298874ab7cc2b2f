// Measures the ledger: posting against plain inserts of the same rows, a month's account against a scan of all
// movements and against itself in a ledger a tenth as large, and the memory of a large posting. Prints ratios measured
// side by side in one run, never a verdict on a time.
//
//   ledger_bench [SHARE]     SHARE of the full size, 0.01 for a quick look
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "ledger/reading/month.hpp"
#include "ledger/writing/close.hpp"
#include "ledger/writing/posting.hpp"
#include "tests/bench/plain_inserts.hpp"

#include "tests/unit/ledger/made_drafts.hpp"

using namespace flutebook;
using namespace flutebook::ledger;

namespace {

constexpr int runs = 5;

struct Seconds {
    double processor, wall;
};

Seconds seconds(const auto& work) {
    const std::clock_t processor = std::clock();
    const auto wall = std::chrono::steady_clock::now();
    work();
    return {static_cast<double>(std::clock() - processor) / CLOCKS_PER_SEC,
            std::chrono::duration<double>(std::chrono::steady_clock::now() - wall).count()};
}

double median(std::vector<double> values) {
    std::nth_element(values.begin(), values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2), values.end());
    return values[values.size() / 2];
}

// On the disk that people's files are on: every commit waits for it.
class Place {
public:
    Place() {
        auto name = (std::filesystem::temp_directory_path() / "flutebook-bench-XXXXXX").string();
        if (mkdtemp(name.data()) == nullptr) std::exit(1);
        path_ = name;
    }
    Place(const Place&) = delete;
    Place& operator=(const Place&) = delete;
    ~Place() { std::filesystem::remove_all(path_); }

    [[nodiscard]] std::string fresh(const std::string& name) const {
        for (const auto* end : {"", "-wal", "-shm", ".lock"}) std::filesystem::remove(path_ / (name + end));
        return (path_ / name).string();
    }

private:
    std::filesystem::path path_;
};

void against_plain_inserts(std::size_t documents) {
    const Place place;
    const auto drafts = fixture::DocumentStream(1).take(documents);
    std::vector<double> ratios, wall_ratios, rates;
    std::size_t rows = 0;
    for (int run = 0; run <= runs; ++run) {
        const auto file = place.fresh("ledger.db");
        const auto posting = seconds([&] {
            auto store = Store::open_for_writing(file, IfMissing::create);
            Posting all(store, "bench");
            for (const auto& draft : drafts) all.add(draft);
            all.commit();
        });
        const bench::PlainRows plain(file);
        rows = plain.count();
        const auto bare = place.fresh("bare.db");
        const auto inserting = seconds([&] { plain.insert_into(bare); });
        if (run == 0) continue;  // warm-up
        ratios.push_back(inserting.processor / posting.processor);
        wall_ratios.push_back(inserting.wall / posting.wall);
        rates.push_back(static_cast<double>(documents) / posting.wall);
    }
    fmt::print(
        "posting against plain inserts        {:.2f}   at least 0.20  ({} documents, {} rows of the same bytes)\n",
        median(ratios), documents, rows);
    fmt::print("  by the clock on the wall {:.2f}; {:.0f} documents a second\n", median(wall_ratios), median(rates));
}

// A ledger of many months of one size, all closed but the last.
class Years {
public:
    Years(const Place& place, const std::string& name, int months, std::int64_t movements_a_month)
        : file_(place.fresh(name)), months_(months) {
        auto store = Store::open_for_writing(file_, IfMissing::create);
        std::int64_t ref = 1;
        for (int month = 0; month < months; ++month) {
            Posting posting(store, "bench");
            for (std::int64_t movements = 0; movements < movements_a_month;) {
                // Every month the same documents, under refs of their own.
                if (movements == 0) stream_ = fixture::DocumentStream(77, 1, ref);
                auto draft = stream_.next();
                const auto of = draft.date.year() / draft.date.month() + std::chrono::months(month);
                draft.date = of / draft.date.day();
                movements += static_cast<std::int64_t>(draft.movements.size());
                posting.add(draft);
                ++ref;
            }
            posting.commit();
            if (month + 1 < months) static_cast<void>(close_month(store, {month_number(month), {}, {}, "", "bench"}));
        }
    }

    [[nodiscard]] double account_seconds() const {
        const auto store = Store::open_for_reading(file_);
        const auto last = month_number(months_ - 1);
        std::vector<double> times;
        for (int run = 0; run < 41; ++run)
            times.push_back(seconds([&] {
                                const Snapshot snapshot(store);
                                const auto rows = flows(store, last).size() + balances_before(store, last).size() +
                                                  expected_losses(store, last).size() + counts(store, last).size();
                                if (rows == 0) std::exit(1);
                            }).wall);
        return median(times);
    }

    [[nodiscard]] double scan_seconds() const {
        const auto last = month_number(months_ - 1);
        const auto number = int{last.year()} * 100 + static_cast<int>(unsigned{last.month()});
        const auto sql = fmt::format(
            "SELECT from_account, to_account, material, cause, count(*), sum(grams), sum(money) FROM movement "
            "WHERE day / 100 = {} GROUP BY 1, 2, 3, 4",
            number);
        std::vector<double> times;
        for (int run = 0; run < 3; ++run)
            times.push_back(seconds([&] {
                                if (bench::read_rows(file_, sql) == 0) std::exit(1);
                            }).wall);
        return median(times);
    }

private:
    static Month month_number(int month) { return std::chrono::year(2026) / 9 + std::chrono::months(month); }

    std::string file_;
    int months_;
    fixture::DocumentStream stream_{77, 1};
};

void a_month_of_many(std::int64_t movements_a_month) {
    const Place place;
    const Years ten(place, "ten.db", 10, movements_a_month);
    const Years hundred(place, "hundred.db", 100, movements_a_month);
    const double scan = hundred.scan_seconds();
    std::vector<double> growth, shares;
    for (int run = 0; run < runs; ++run) {
        const double small = ten.account_seconds();
        const double large = hundred.account_seconds();
        growth.push_back(large / small);
        shares.push_back(large / scan);
    }
    fmt::print("a month's account against a scan     1/{:.0f}   at most 1/50   ({} movements in 100 months)\n",
               1 / median(shares), 100 * movements_a_month);
    fmt::print("  of 100 months against of 10        {:.2f}   at most 1.5    (the month has {} movements in both)\n",
               median(growth), movements_a_month);
}

double resident_mib() {
    std::ifstream file("/proc/self/statm");
    double pages = 0;
    file >> pages >> pages;
    return pages * static_cast<double>(sysconf(_SC_PAGESIZE)) / (1 << 20);
}

void memory_of_posting(std::size_t documents) {
    const Place place;
    auto store = Store::open_for_writing(place.fresh("large.db"), IfMissing::create);
    fixture::DocumentStream stream(5);
    Posting posting(store, "bench");
    double at_a_tenth = 0;
    for (std::size_t i = 0; i < documents; ++i) {
        posting.add(stream.next());
        if (i == documents / 10) at_a_tenth = resident_mib();
    }
    const double at_the_end = resident_mib();
    posting.commit();
    fmt::print(
        "memory after all against a tenth     {:.2f}   flat is 1      ({} documents in one posting, {:.0f} MiB)\n",
        at_the_end / at_a_tenth, documents, at_the_end);
}

}  // namespace

int main(int count, char** words) {
    const double share = count > 1 ? std::atof(words[1]) : 1;
    const auto sized = [&](double full) { return static_cast<std::size_t>(std::max(200.0, full * share)); };
    fmt::print("ledger: medians of interleaved runs; posting by processor time\n");
    memory_of_posting(sized(1000000));
    against_plain_inserts(sized(100000));
    a_month_of_many(static_cast<std::int64_t>(sized(100000)));
    return 0;
}
