#include "host/plugin_check/trial.hpp"

#include <fmt/format.h>

#include <system_error>

#include "host/base/errors.hpp"
#include "host/plugin_check/child_process_main.hpp"
#include "host/sandbox/build.hpp"

namespace flutebook::plugin_check {
namespace {

using namespace std::chrono_literals;

constexpr std::size_t most_resident = std::size_t{512} << 20;
constexpr std::size_t orders_for_trust = 24;
constexpr std::size_t many_orders_for_trust = 100;
constexpr std::size_t orders_for_check = 60;
constexpr sandbox::ChildLimits trust_limits{2s * sandbox::slowness, 2s * sandbox::slowness, most_resident};
constexpr sandbox::ChildLimits check_limits{600s, 10s * sandbox::slowness, most_resident};

std::vector<const Rule*> every_rule() {
    std::vector<const Rule*> result;
    for (const Rule& rule : rules()) result.push_back(&rule);
    return result;
}

}  // namespace

TrialRequest asked_for_trust(std::string program) {
    return {std::move(program),
            every_rule(),
            {1, orders_for_trust, Settings::by_default, many_orders_for_trust},
            trust_limits};
}

TrialRequest asked_for_check(std::string program, std::uint64_t seed, std::size_t many_orders) {
    return {std::move(program), every_rule(), {seed, orders_for_check, Settings::drawn, many_orders}, check_limits};
}

CheckFindings try_plugin(const contract::PluginFile& file, const TrialRequest& options, const Watcher& watcher) {
    TrialReport report(options.rules, watcher);
    try {
        const sandbox::WatchedEnd child_end = sandbox::run_watched(
            options.program, words_of(file.name(), options), file.descriptor(),
            [&](const sandbox::ChildMessage& message) { report.take(message); }, options.limits);
        return report.conclude(child_end, options.limits);
    } catch (const std::system_error& error) {
        throw ModelError(fmt::format("{}: could not be tried: {}; allow the program to start processes", file.where(),
                                     error.what()));
    }
}

}  // namespace flutebook::plugin_check
