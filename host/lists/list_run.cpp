// Threads take batches of a window in turn; a row's answer does not depend on its batch, so it does not depend on them.
#include "host/lists/list_run.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <exception>
#include <span>
#include <thread>
#include <utility>

#include "host/base/errors.hpp"
#include "host/lists/row_answer.hpp"

namespace flutebook::lists {

namespace {

constexpr std::size_t batch_rows = 128;         // at most, that go through the engine together
constexpr std::size_t batches_to_a_thread = 8;  // of one window

ListColumns read_header(const workplace::Workplace& workplace, ListSource& source) {
    const std::optional<ListRow> header = source.next();
    if (!header)
        throw InputError(InputError::Whose::request,
                         {"the list is empty: found no header; expected a first row that names the columns"});
    return ListColumns::read(*header, workplace.plant, workplace.engine.graph(), source.numbers());
}

}  // namespace

ListRun::ListRun(const workplace::Workplace& workplace, ListSource& source, const ListOptions& options)
    : workplace_(workplace),
      source_(source),
      options_(options),
      columns_(read_header(workplace, source)),
      threads_(std::max(options.threads, 1U)) {}

std::span<const AnsweredRow> ListRun::next() {
    rows_.clear();
    const std::size_t window = batch_rows * batches_to_a_thread * threads_;
    rows_.reserve(window);
    while (rows_.size() < window) {
        std::optional<ListRow> row = source_.next();
        if (!row) break;
        rows_.emplace_back().row = std::move(*row);
    }
    answer();
    return rows_;
}

void ListRun::answer() {
    // Of a short list each thread has a share.
    const std::size_t share = (rows_.size() + threads_ - 1) / threads_;
    const std::size_t batch_size = std::clamp<std::size_t>(share, 1, batch_rows);
    const std::size_t batches = (rows_.size() + batch_size - 1) / batch_size;
    const std::size_t threads = std::min(threads_, batches);
    std::atomic<std::size_t> taken{0};
    std::vector<std::exception_ptr> failures(threads);
    const auto work = [&](std::size_t thread) {
        try {
            for (std::size_t batch = taken++; batch < batches; batch = taken++) {
                const std::size_t first = batch * batch_size;
                const std::size_t count = std::min(batch_size, rows_.size() - first);
                answer_rows(workplace_, columns_, options_, std::span(rows_).subspan(first, count));
            }
        } catch (...) {
            failures[thread] = std::current_exception();
        }
    };
    {
        std::vector<std::jthread> others;
        for (std::size_t thread = 1; thread < threads; ++thread) others.emplace_back(work, thread);
        if (threads > 0) work(0);
    }
    for (const std::exception_ptr& failure : failures)
        if (failure) std::rethrow_exception(failure);
}

}  // namespace flutebook::lists
