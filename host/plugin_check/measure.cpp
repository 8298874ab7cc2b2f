#include "host/plugin_check/measure.hpp"

#include <algorithm>
#include <chrono>

#include "host/plugin_check/rounds.hpp"

namespace flutebook::plugin_check {
namespace {

using Clock = std::chrono::steady_clock;

constexpr std::size_t rounds = 41;

Group full_block(const std::vector<Group>& groups) {
    const auto largest = std::max_element(
        groups.begin(), groups.end(), [](const Group& left, const Group& right) { return left.size() < right.size(); });
    return repeated(*largest, usual_block);
}

// The middle of many: neither the first, cold call nor one that was interrupted.
double nanoseconds_a_row(const contract::Model& model, const Group& block) {
    Stage stage(model, block.front()->shape, usual_block, Ground::open);
    std::vector<double> taken;
    for (std::size_t round = 0; round < rounds; ++round) {
        stage.fill(block);
        stage.begin_results();
        const Clock::time_point begun = Clock::now();
        model.evaluate(&stage.block());
        taken.push_back(std::chrono::duration<double, std::nano>(Clock::now() - begun).count());
    }
    std::nth_element(taken.begin(), taken.begin() + rounds / 2, taken.end());
    return taken[rounds / 2] / static_cast<double>(block.size());
}

}  // namespace

void measure(Subject& subject) {
    subject.report().say("phase", "it was timed");
    const std::vector<Group> groups = by_shape(subject.rows());
    subject.report().say_figure("load_ms", subject.loading().ms);
    subject.report().say_figure("rows_tried", static_cast<double>(subject.rows().size()));
    if (!groups.empty()) subject.report().say_figure("row_ns", nanoseconds_a_row(subject.model(), full_block(groups)));
}

}  // namespace flutebook::plugin_check
