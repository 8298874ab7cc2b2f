#include "host/plugin_worker/worker_pool.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <system_error>

namespace flutebook::plugin_worker {
namespace {

using contract::Failure;

// Enough for most shapes of an order, so that a new shape seldom needs a new worker. Unused memory costs nothing.
constexpr std::size_t least_bytes = std::size_t{4} << 20;

}  // namespace

std::optional<Failure> WorkerPool::evaluate(const flutebook_block& block, contract::RowSpan rows) {
    try {
        std::unique_ptr<WorkerProcess> worker = take(names_.bytes_for(block));
        auto failure = worker->evaluate(names_, block, rows, patience_);
        if (!failure || failure->kind == Failure::Kind::answered) give_back(std::move(worker));
        return failure;
    } catch (const std::system_error& error) {
        return Failure{Failure::Kind::lost, fmt::format("got no process of its own ({})", error.what())};
    }
}

std::unique_ptr<WorkerProcess> WorkerPool::take(std::size_t bytes) {
    while (true) {
        std::unique_ptr<WorkerProcess> last;
        {
            const std::lock_guard lock(mutex_);
            if (idle_.empty()) break;
            last = std::move(idle_.back());
            idle_.pop_back();
        }
        // A worker that was killed, or whose memory is too small, ends here.
        if (last->is_alive() && last->bytes() >= bytes) return last;
    }
    return std::make_unique<WorkerProcess>(program_, file_, std::max(bytes, least_bytes));
}

void WorkerPool::give_back(std::unique_ptr<WorkerProcess> worker) {
    const std::lock_guard lock(mutex_);
    idle_.push_back(std::move(worker));
}

}  // namespace flutebook::plugin_worker
