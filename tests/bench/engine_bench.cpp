// Measures the plugin road: against the same arithmetic as one plain function, from a hundred candidates to a million,
// and on two threads against one. Prints ratios measured side by side in one run, never a verdict on a time.
//
//   engine_bench PLANT PLUGINS [SHARE]     SHARE of the full size, 0.01 for a quick look
#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <ctime>
#include <map>
#include <string>
#include <vector>

#include "host/engine/costing/columns.hpp"
#include "tests/bench/plain_cost.hpp"
#include "tests/bench/timing.hpp"
#include "tests/bench/workload.hpp"

using namespace flutebook;
using bench::median;
using bench::runs;
using bench::wall_seconds;

namespace {

// Of this process alone: what else the machine does meanwhile does not count.
double processor_seconds(const auto& work) {
    const std::clock_t start = std::clock();
    work();
    return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

// Every row's cost by the plain function, in ten-thousandths; a row it could not cost stops the bench.
class PlainRoad {
public:
    PlainRoad(const bench::Workload& workload, const std::vector<engine::Row>& rows)
        : prices_(workload.prices()), rows_(rows) {
        for (const engine::Row& row : rows) extras_.try_emplace(row.order->request, workload.extras_of(*row.order));
        for (const engine::Row& row : rows) extras_by_row_.push_back(&extras_.at(row.order->request));
    }

    void cost(std::vector<Money>& into) const {
        for (std::size_t r = 0; r < rows_.size(); ++r) {
            const auto result = bench::plain_cost(rows_[r], prices_, *extras_by_row_[r]);
            if (!result) std::abort();
            into[r] = *result;
        }
    }

private:
    bench::Prices prices_;
    std::map<const orders::Request*, bench::Extras> extras_;
    std::vector<const bench::Extras*> extras_by_row_;
    const std::vector<engine::Row>& rows_;
};

void against_plain(bench::Workload& workload, std::size_t count) {
    const std::vector<engine::Row> rows = workload.rows(count);
    const PlainRoad plain(workload, rows);
    std::vector<Money> plain_costs(rows.size());
    std::vector<engine::Outcome> outcomes;
    std::vector<double> ratios, plugin_ns, plain_ns;
    for (int run = 0; run <= runs; ++run) {
        const double by_plugins = processor_seconds([&] { outcomes = workload.engine().cost(rows, 1); });
        const double by_hand = processor_seconds([&] { plain.cost(plain_costs); });
        if (run == 0) continue;  // warm-up
        ratios.push_back(by_plugins / by_hand);
        plugin_ns.push_back(by_plugins * 1e9 / static_cast<double>(count));
        plain_ns.push_back(by_hand * 1e9 / static_cast<double>(count));
    }
    for (std::size_t r = 0; r < rows.size(); ++r)
        if (outcomes[r].cost != plain_costs[r]) {
            fmt::print("row {}: {} by plugins, {} by the plain function\n", r, outcomes[r].cost.to_double(),
                       plain_costs[r].to_double());
            std::exit(1);
        }
    fmt::print(
        "plugins against one plain function   {:.2f}   at most 2.0   ({} candidates, blocks of {}, every cost equal)\n",
        median(ratios), count, engine::block_rows);
    fmt::print("  a candidate: {:.0f} ns by plugins, {:.0f} ns by the plain function\n", median(plugin_ns),
               median(plain_ns));
}

void over_sizes(bench::Workload& workload, std::size_t most) {
    std::vector<std::size_t> sizes;
    for (std::size_t size = 100; size <= most; size *= 10) sizes.push_back(size);
    std::vector<std::vector<double>> each(sizes.size());
    for (int run = 0; run <= runs; ++run)
        for (std::size_t s = 0; s < sizes.size(); ++s) {
            const std::vector<engine::Row> rows = workload.rows(sizes[s]);
            // Small ones many times over, so that every figure stands on as many candidates.
            const std::size_t repeats = std::max<std::size_t>(1, most / 10 / sizes[s]);
            const double seconds = processor_seconds([&] {
                for (std::size_t i = 0; i < repeats; ++i) static_cast<void>(workload.engine().cost(rows, 1));
            });
            if (run > 0) each[s].push_back(seconds * 1e9 / static_cast<double>(repeats * sizes[s]));
        }
    double least = 1e300;
    double largest = 0;
    for (std::size_t s = 0; s < sizes.size(); ++s) {
        const double ns = median(each[s]);
        least = std::min(least, ns);
        largest = std::max(largest, ns);
        fmt::print("  {:>8} candidates: {:.0f} ns each\n", sizes[s], ns);
    }
    fmt::print("cost of a candidate over sizes       {:.2f}   at most 1.5   (largest over smallest, {} to {})\n",
               largest / least, sizes.front(), sizes.back());
}

void over_threads(bench::Workload& workload, std::size_t count) {
    const std::vector<engine::Row> rows = workload.rows(count);
    std::vector<double> ratios;
    for (int run = 0; run <= runs; ++run) {
        const double one = wall_seconds([&] { static_cast<void>(workload.engine().cost(rows, 1)); });
        const double two = wall_seconds([&] { static_cast<void>(workload.engine().cost(rows, 2)); });
        if (run > 0) ratios.push_back(one / two);
    }
    fmt::print("two threads against one              {:.2f}   at least 1.7  ({} candidates)\n", median(ratios), count);
}

}  // namespace

int main(int count, char** words) {
    if (count < 3) {
        fmt::print(stderr, "usage: engine_bench PLANT PLUGINS [SHARE]\n");
        return 2;
    }
    const double share = count > 3 ? std::atof(words[3]) : 1;
    const auto sized = [&](double full) { return static_cast<std::size_t>(std::max(200.0, full * share)); };
    bench::Workload workload(words[1], words[2]);
    fmt::print("median of {} interleaved runs; processor time, for threads wall time\n", runs);
    against_plain(workload, sized(200000));
    over_sizes(workload, sized(1000000));
    over_threads(workload, sized(1000000));
    return 0;
}
