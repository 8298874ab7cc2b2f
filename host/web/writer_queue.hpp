// The one writer of the ledger: a queue of acts that run on its thread. Each act opens the ledger and closes it again,
// so that the command line can write between them.
#pragma once

#include <condition_variable>
#include <cstddef>
#include <deque>
#include <functional>
#include <mutex>
#include <thread>

namespace flutebook::web {

/// Any thread.
class WriterQueue {
public:
    explicit WriterQueue(std::size_t most);
    WriterQueue(const WriterQueue&) = delete;
    WriterQueue& operator=(const WriterQueue&) = delete;
    /// What waits is done first.
    ~WriterQueue();

    /// False where too many wait: `act`, which throws nothing, is not taken then.
    [[nodiscard]] bool add(std::function<void()> act);

private:
    void work();

    const std::size_t most_;
    std::mutex mutex_;
    std::condition_variable changed_;
    std::deque<std::function<void()>> waiting_;
    bool is_ending_ = false;
    std::thread thread_;
};

}  // namespace flutebook::web
