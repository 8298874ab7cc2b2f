// Measures what it costs to let a model work in a process of its own: the whole of a quote's work with one model
// isolated, and one model alone at blocks of many rows. Prints ratios measured side by side in one run, wall time,
// never a verdict on a time.
//
//   isolation_bench PLANT PLUGINS PROGRAM [SHARE]     PROGRAM is the host's own; SHARE of the full size
#include <fmt/format.h>

#include <cstdint>
#include <cstdlib>
#include <limits>
#include <string>
#include <vector>

#include "host/contract/call.hpp"
#include "host/engine/costing/blocks.hpp"
#include "host/plugin_worker/isolation.hpp"
#include "tests/bench/timing.hpp"
#include "tests/bench/workload.hpp"

using namespace flutebook;
using bench::median;
using bench::runs;
using bench::wall_seconds;

namespace {

constexpr const char* models[] = {"run",     "scrap",  "paper",       "starch",  "setup",
                                  "running", "energy", "consumables", "tooling", "delivery"};

// Wall time a run with the model isolated takes, over the same without.
double ratio_of_work(bench::Workload& here, bench::Workload& apart, std::size_t count, unsigned threads) {
    const std::vector<engine::Row> rows = here.rows(count);
    const std::vector<engine::Row> rows_apart = apart.rows(count);
    std::vector<engine::Outcome> costs, costs_apart;
    std::vector<double> ratios;
    for (int run = 0; run <= runs; ++run) {
        const double in_here = wall_seconds([&] { costs = here.engine().cost(rows, threads); });
        const double in_apart = wall_seconds([&] { costs_apart = apart.engine().cost(rows_apart, threads); });
        if (run > 0) ratios.push_back(in_apart / in_here);
    }
    for (std::size_t r = 0; r < rows.size(); ++r)
        if (costs[r].cost != costs_apart[r].cost) {
            fmt::print("row {}: {} here, {} isolated\n", r, costs[r].cost.to_double(), costs_apart[r].cost.to_double());
            std::exit(1);
        }
    return median(ratios);
}

// A block of many rows for one model, filled with what an order of the plant gives it over and over.
class LargeBlock {
public:
    LargeBlock(const engine::Blocks& blocks, const engine::Row& row, std::size_t model, std::size_t rows)
        : rows_(rows), pitch_(rows + 8), columns_(blocks.columns_of(row)) {
        const engine::ModelSlots& model_slots = blocks.slots().models[model];
        take(model_slots.needs, needs_);
        take(model_slots.settings, settings_);
        take(model_slots.provides, provides_);
        take(model_slots.quantities, quantities_);
        take(model_slots.rates, rates_);
        take(model_slots.losses, losses_);
        refused_.assign(rows, 0);
        block_ = {sizeof(flutebook_block),
                  static_cast<std::uint32_t>(rows),
                  static_cast<std::uint32_t>(row.plies()),
                  static_cast<std::uint32_t>(row.steps()),
                  pitch_,
                  needs_.data(),
                  settings_.data(),
                  provides_.data(),
                  quantities_.data(),
                  rates_.data(),
                  losses_.data(),
                  refused_.data()};
    }
    LargeBlock(const LargeBlock&) = delete;
    LargeBlock& operator=(const LargeBlock&) = delete;

    /// As the engine hands it over to a model that works here: results begin afresh.
    const flutebook_block& begun() {
        for (double* result : results_) std::fill_n(result, rows_, 0.0);
        std::fill(refused_.begin(), refused_.end(), 0U);
        return block_;
    }
    const flutebook_block& as_it_stands() const { return block_; }

private:
    template <typename Pointer>
    void take(const std::vector<engine::Slot>& slots, std::vector<Pointer>& into) {
        for (const engine::Slot slot : slots) {
            const std::size_t extent = columns_.extent(slot);
            auto& memory = memory_.emplace_back(extent * pitch_ + 8);
            double* first = memory.data();
            while (reinterpret_cast<std::uintptr_t>(first) % 64 != 0) ++first;
            for (std::size_t i = 0; i < extent; ++i) {
                std::fill_n(first + i * pitch_, rows_, *columns_.column(slot, i));
                if constexpr (std::is_same_v<Pointer, double*>) results_.push_back(first + i * pitch_);
            }
            into.push_back(first);
        }
    }

    std::size_t rows_, pitch_;
    engine::Columns columns_;
    std::vector<std::vector<double>> memory_;
    std::vector<const double*> needs_, settings_;
    std::vector<double*> provides_, quantities_, rates_, losses_, results_;
    std::vector<std::uint32_t> refused_;
    flutebook_block block_{};
};

double ratio_of_model(const engine::Blocks& here, const engine::Blocks& apart, const engine::Row& row,
                      const std::string& id, std::size_t rows) {
    std::size_t at = 0;
    while (here.graph().models[at].id != id) ++at;
    LargeBlock block(here, row, at, rows);
    const auto evaluate = here.graph().models[at].evaluate;
    auto& elsewhere = *apart.graph().models[at].elsewhere;
    std::vector<double> ratios;
    constexpr int calls = 50;
    for (int run = 0; run <= 4 * runs; ++run) {
        const double in_here = wall_seconds([&] {
            for (int i = 0; i < calls; ++i)
                if (contract::call(evaluate, block.begun())) std::abort();
        });
        const double in_apart = wall_seconds([&] {
            for (int i = 0; i < calls; ++i)
                if (elsewhere.evaluate(block.as_it_stands(), {0, rows})) std::abort();
        });
        if (run > 0) ratios.push_back(in_apart / in_here);
    }
    return median(ratios);
}

}  // namespace

int main(int count, char** words) {
    if (count < 4) {
        fmt::print(stderr, "usage: isolation_bench PLANT PLUGINS PROGRAM [SHARE]\n");
        return 2;
    }
    const double share = count > 4 ? std::atof(words[4]) : 1;
    const auto rows = static_cast<std::size_t>(std::max(500.0, 100000 * share));
    plugin_worker::ProcessLoader isolation(words[3]);
    bench::Workload here(words[1], words[2]);
    fmt::print("isolated against in-process, median of interleaved runs; wall time\n");
    for (const char* model : {"paper", "energy", "run"}) {
        bench::Workload apart(words[1], words[2], {model}, isolation);
        for (const unsigned threads : {1U, 2U})
            fmt::print("whole quotes, {:<6} isolated          {:.2f}   {}   ({} candidates, {}, every cost equal)\n",
                       model, ratio_of_work(here, apart, rows, threads), threads == 1 ? "at most 1.2" : "           ",
                       rows, threads == 1 ? "one thread" : "two threads");
    }
    bench::Workload all(words[1], words[2], {std::begin(models), std::end(models)}, isolation);
    const engine::Row row = here.rows(1).front();
    for (const std::size_t block : {engine::block_rows, std::size_t{1024}}) {
        fmt::print("one model alone, blocks of {}:", block);
        for (const char* model : models)
            fmt::print(" {} {:.1f}", model,
                       ratio_of_model(here.engine().blocks(), all.engine().blocks(), row, model, block));
        fmt::print("\n");
    }
    return 0;
}
