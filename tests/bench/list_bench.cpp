// Measures what a list of many items costs, from its file to the file of its answer: against the same items priced by a
// plain program that does nothing else, and whether memory stays flat. Every price must be equal. Prints ratios
// measured side by side in one run, never a verdict on a time.
//
//   list_bench PLANT PLUGINS [SHARE]     SHARE of the full size, 0.01 for a quick look
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <random>
#include <string>
#include <thread>
#include <vector>

#include "host/answers/list_json.hpp"
#include "host/lists/list_run.hpp"
#include "host/lists/list_writer.hpp"
#include "tests/bench/plain_list.hpp"
#include "tests/bench/timing.hpp"
#include "tests/bench/workload.hpp"

using namespace flutebook;
using bench::median;
using bench::wall_seconds;

namespace {

double processor_seconds(const auto& work) {
    const std::clock_t start = std::clock();
    work();
    return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

double resident_mib() {
    std::ifstream file("/proc/self/statm");
    double pages = 0;
    file >> pages >> pages;
    return pages * static_cast<double>(sysconf(_SC_PAGESIZE)) / (1 << 20);
}

// Everyday boxes: each a size of its own, on the boards that are glued.
void write_list(const std::string& file, std::size_t rows) {
    std::mt19937_64 random(11);
    const auto drawn = [&](std::uint64_t low, std::uint64_t high) { return low + random() % (high - low + 1); };
    const std::vector<std::string> boards = {"E-110", "B-110", "B-140", "C-125", "C-175", "BC-170"};
    std::ofstream list(file);
    list << bench::plain_list_header << "\n";
    for (std::size_t i = 0; i < rows; ++i) {
        const std::uint64_t length = drawn(220, 480), width = drawn(150, 220), height = drawn(120, 380);
        list << fmt::format("I-{},Customer {},2026-10-{},0201,{},{},{},{},{},0.{},{},0.{:02},{}\n", i, i % 700,
                            drawn(10, 28), length, width, height, boards[drawn(0, 5)], 100 * drawn(3, 200),
                            drawn(10, 30), drawn(0, 3), drawn(1, 40), drawn(5, 400));
    }
}

class ListBench {
public:
    ListBench(const std::string& folder, const std::string& plugins, const std::string& place, std::size_t rows)
        : prices_(bench::Workload(folder, plugins).prices()),
          work_{plant::read_plant(folder), engine::Engine::start(plant::read_plant(folder), plugins)},
          list_(place + "/list.csv"),
          answer_(place + "/answer.csv"),
          rows_(rows) {
        write_list(list_, rows);
    }

    // By the program's own road; calls `watch` with the rows that are done.
    template <typename Watch>
    std::vector<Money> by_list(unsigned threads, const Watch& watch) const {
        const auto source = lists::open_csv_list(list_);
        lists::ListOptions options{};
        options.threads = threads;
        lists::ListRun run(work_, *source, options);
        const auto writer = lists::csv_list_writer(answer_, source->numbers(), lists::table_header(run.columns()));
        std::vector<Money> result;
        result.reserve(rows_);
        for (auto rows = run.next(); !rows.empty(); rows = run.next()) {
            for (const lists::AnsweredRow& row : rows) {
                if (!row.item.price || !row.item.warnings.empty()) std::abort();
                writer->write(lists::table_row(run.columns(), row));
                result.push_back(row.item.price->price);
            }
            watch(result.size());
        }
        if (!writer->close().empty()) std::abort();
        return result;
    }

    [[nodiscard]] std::vector<Money> by_plain_program(bench::BlankBy blank) const {
        return bench::price_plain_list(work_.plant, prices_, blank, list_, answer_);
    }

    void against_plain() const {
        std::vector<double> drawn, formula, list_us, plain_us;
        const double us_a_row = 1e6 / static_cast<double>(rows_);
        for (int run = 0; run <= bench::runs; ++run) {
            std::vector<Money> listed, plain;
            const double list_s = processor_seconds([&] { listed = by_list(1, [](std::size_t) {}); });
            const double plain_s = processor_seconds([&] { plain = by_plain_program(bench::BlankBy::style); });
            expect_equal(listed, plain);
            const double formula_s = processor_seconds([&] { plain = by_plain_program(bench::BlankBy::formula); });
            expect_equal(listed, plain);
            if (run == 0) continue;  // warm-up
            drawn.push_back(list_s / plain_s);
            formula.push_back(list_s / formula_s);
            list_us.push_back(list_s * us_a_row);
            plain_us.push_back(plain_s * us_a_row);
        }
        fmt::print(
            "a list against a plain program       {:.2f}   at most 3.0   ({} rows, read, priced and written; "
            "every price equal)\n",
            median(drawn), rows_);
        fmt::print("  a row: {:.1f} us by the list, {:.1f} us by the plain program\n", median(list_us),
                   median(plain_us));
        fmt::print("  where the plain program knows no styles but one: {:.2f}\n", median(formula));
    }

    void memory() const {
        const unsigned threads = std::max(1U, std::thread::hardware_concurrency());
        double at_a_tenth = 0, most = 0;
        const double seconds = wall_seconds([&] {
            static_cast<void>(by_list(threads, [&](std::size_t done) {
                most = std::max(most, resident_mib());
                if (done <= rows_ / 10) at_a_tenth = most;
            }));
        });
        if (at_a_tenth == 0) at_a_tenth = most;
        fmt::print(
            "most memory against that at a tenth  {:.2f}   flat is 1     ({} rows in {:.1f} s on {} threads, "
            "{:.0f} MiB)\n",
            most / at_a_tenth, rows_, seconds, threads, most);
    }

private:
    static void expect_equal(const std::vector<Money>& listed, const std::vector<Money>& plain) {
        if (listed == plain) return;
        for (std::size_t r = 0; r < std::min(listed.size(), plain.size()); ++r)
            if (listed[r] != plain[r])
                fmt::print("row {}: {} by the list, {} by the plain program\n", r + 1, listed[r].to_double(),
                           plain[r].to_double());
        std::exit(1);
    }

    bench::Prices prices_;
    workplace::Workplace work_;
    std::string list_, answer_;
    std::size_t rows_;
};

}  // namespace

int main(int count, char** words) {
    if (count < 3) {
        fmt::print(stderr, "usage: list_bench PLANT PLUGINS [SHARE]\n");
        return 2;
    }
    const double share = count > 3 ? std::atof(words[3]) : 1;
    auto place = (std::filesystem::temp_directory_path() / "flutebook-bench-XXXXXX").string();
    if (mkdtemp(place.data()) == nullptr) return 1;
    {
        const ListBench bench(words[1], words[2], place, static_cast<std::size_t>(std::max(1000.0, 100000 * share)));
        fmt::print("list: medians of interleaved runs, processor time of one thread\n");
        bench.memory();  // first, while nothing is left over from other runs
        bench.against_plain();
    }
    std::filesystem::remove_all(place);
    return 0;
}
