#include "host/plugin_worker/worker.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <new>

#include "host/base/characters.hpp"
#include "host/plugin_worker/child_process_main.hpp"
#include "host/sandbox/child.hpp"
#include "host/sandbox/one_processor.hpp"

namespace flutebook::plugin_worker {
namespace {

using contract::Failure;
using Clock = std::chrono::steady_clock;

// How often a worker is checked while it evaluates: whether it still runs, and how much memory it uses.
constexpr std::chrono::milliseconds glance{5};
constexpr std::size_t most_resident = std::size_t{512} << 20;

Failure lost(std::string text) {
    return {Failure::Kind::lost, std::move(text)};
}

}  // namespace

WorkerProcess::WorkerProcess(const std::string& program, const contract::PluginFile& file, std::size_t bytes)
    : memory_(bytes),
      header_(*new (memory_.at()) BlockHeader{}),
      child_(program, words_to_work(file.name(), bytes), {memory_.descriptor(), file.descriptor()}) {}

std::optional<Failure> WorkerProcess::evaluate(const NameAxes& names, const flutebook_block& block,
                                               contract::RowSpan rows, std::chrono::milliseconds patience) {
    if (number_ == 0) {
        if (auto failure = wait_for(ready, deadline)) return failure;
    }
    if (!layout_ || !layout_->is_for(block)) {
        layout_.emplace(names, block);
        ++layouts_;
    }
    layout_->write_to(header_, layouts_);
    layout_->copy_in(memory_.at(), block, rows);
    header_.rows = static_cast<std::uint32_t>(rows.count);
    if (auto failure = ask(patience)) return failure;
    if (auto failure = reported_error()) return failure;
    layout_->copy_out(memory_.at(), block, rows);
    return std::nullopt;
}

std::optional<Failure> WorkerProcess::ask(std::chrono::milliseconds patience) {
    const sandbox::OneProcessor together(child_.id(), processor_);
    header_.asked.set(number_ + 1);
    return wait_for(number_ + 1, patience);
}

std::optional<Failure> WorkerProcess::wait_for(std::uint32_t number, std::chrono::milliseconds patience) {
    number_ = number;
    if (header_.answered.look_for(number)) return std::nullopt;
    const Clock::time_point end = Clock::now() + patience;
    while (!header_.answered.sleep_for(number, glance)) {
        if (const auto ended = child_.ended()) return lost(sandbox::ending(*ended));
        if (child_.resident_bytes() > most_resident)
            return lost(fmt::format("took more than {} MB", most_resident >> 20U));
        if (Clock::now() >= end)
            return lost(fmt::format("did not come back within {} s", static_cast<double>(patience.count()) / 1000));
    }
    return std::nullopt;
}

std::optional<Failure> WorkerProcess::reported_error() const {
    const std::array<char, longest_error> copy = header_.error;
    const std::string text(copy.begin(), std::find(copy.begin(), copy.end(), '\0'));
    if (text.empty()) return std::nullopt;
    if (!base::is_plain_line(text)) return lost("gave an answer that is no text");
    return Failure{Failure::Kind::answered, text};
}

}  // namespace flutebook::plugin_worker
