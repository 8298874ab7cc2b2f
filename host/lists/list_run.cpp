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

constexpr std::size_t batch_rows = 64;          // that go through the engine together
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
    : workplace_(workplace), source_(source), options_(options), columns_(read_header(workplace, source)) {}

std::vector<AnsweredRow> ListRun::next() {
    std::vector<AnsweredRow> rows;
    const std::size_t window = batch_rows * batches_to_a_thread * std::max(options_.threads, 1U);
    rows.reserve(window);
    while (rows.size() < window) {
        std::optional<ListRow> row = source_.next();
        if (!row) break;
        rows.emplace_back().row = std::move(*row);
    }
    answer(rows);
    return rows;
}

void ListRun::answer(std::vector<AnsweredRow>& rows) const {
    const std::size_t batches = (rows.size() + batch_rows - 1) / batch_rows;
    const std::size_t threads = std::min<std::size_t>(std::max(options_.threads, 1U), batches);
    std::atomic<std::size_t> taken{0};
    std::vector<std::exception_ptr> failures(threads);
    const auto work = [&](std::size_t thread) {
        try {
            engine::Workbench bench(workplace_.engine.blocks());
            for (std::size_t batch = taken++; batch < batches; batch = taken++) {
                const std::size_t first = batch * batch_rows;
                const std::size_t count = std::min(batch_rows, rows.size() - first);
                answer_rows(workplace_, bench, columns_, options_, std::span(rows).subspan(first, count));
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
