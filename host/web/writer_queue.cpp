#include "host/web/writer_queue.hpp"

#include <utility>

namespace flutebook::web {

WriterQueue::WriterQueue(std::size_t most) : most_(most), thread_([this] { work(); }) {}

WriterQueue::~WriterQueue() {
    {
        const std::lock_guard lock(mutex_);
        is_ending_ = true;
    }
    changed_.notify_one();
    thread_.join();
}

bool WriterQueue::add(std::function<void()> act) {
    {
        const std::lock_guard lock(mutex_);
        if (waiting_.size() >= most_) return false;
        waiting_.push_back(std::move(act));
    }
    changed_.notify_one();
    return true;
}

void WriterQueue::work() {
    std::unique_lock lock(mutex_);
    while (true) {
        changed_.wait(lock, [this] { return is_ending_ || !waiting_.empty(); });
        if (waiting_.empty()) return;
        const std::function<void()> act = std::move(waiting_.front());
        waiting_.pop_front();
        lock.unlock();
        act();
        lock.lock();
    }
}

}  // namespace flutebook::web
