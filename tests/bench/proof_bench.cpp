// Measures what one proof by folding takes, style by style, against drawing the same blanks. Prints; says where a proof
// takes 20 ms or more, and never ends in error for a time.
//
//   proof_bench PLANT [SHARE]     SHARE of the full size
#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <vector>

#include "host/blanks/proof.hpp"
#include "host/plant/plant.hpp"
#include "tests/bench/timing.hpp"

using namespace flutebook;
using bench::median;
using bench::runs;
using bench::wall_seconds;

namespace {

struct ProofTime {
    double draw_ms, prove_ms;
};

// Medians of runs, each as many proofs as `repeats`.
ProofTime measured(const box_styles::Style& style, const blanks::StyleSize& size, int repeats) {
    std::vector<blanks::FlatBlank> blanks;
    std::vector<double> draw, prove;
    for (int run = 0; run <= runs; ++run) {
        const double drawing = wall_seconds([&] {
            for (int i = 0; i < repeats; ++i) blanks = blanks::draw_flat(style, size);
        });
        const double proving = wall_seconds([&] {
            for (int i = 0; i < repeats; ++i)
                if (!blanks::prove(blanks).holds()) std::abort();
        });
        if (run == 0) continue;
        draw.push_back(drawing * 1000 / repeats);
        prove.push_back(proving * 1000 / repeats);
    }
    return {median(draw), median(prove)};
}

}  // namespace

int main(int count, char** words) {
    if (count < 2) {
        fmt::print(stderr, "usage: proof_bench PLANT [SHARE]\n");
        return 2;
    }
    const int repeats = static_cast<int>(std::max(3.0, 200 * (count > 2 ? std::atof(words[2]) : 1)));
    const plant::Plant plant = plant::read_plant(words[1]);
    const plant::Allowance& allowance = plant.allowances.front();
    blanks::StyleSize size = {};
    size.inside_mm = {400, 300, 250};
    size.caliper_mm = allowance.panel_mm;  // what a panel is lengthened by is about a thickness
    size.allowance = &allowance;
    double slowest = 0;
    fmt::print("one proof by folding, median of runs; wall time, and how often drawing the blanks\n");
    for (const box_styles::Style& style : plant.styles) {
        if (!style.is_folded()) continue;
        const ProofTime time = measured(style, size, repeats);
        slowest = std::max(slowest, time.prove_ms);
        fmt::print("{:<6} {:7.3f} ms   {:5.1f}\n", style.code, time.prove_ms, time.prove_ms / time.draw_ms);
    }
    fmt::print("slowest {:.3f} ms: {}\n", slowest, slowest < 20 ? "under 20 ms" : "not under 20 ms");
    return 0;
}
