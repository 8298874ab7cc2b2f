// Columns that wait for the next block of their shape: to make them takes longer than to cost a row.
#pragma once

#include <map>
#include <memory>
#include <mutex>
#include <utility>
#include <vector>

#include "host/engine/costing/columns.hpp"

namespace flutebook::engine {

class ColumnsPool;

/// Columns for one block at a time. They go back to their pool, which must outlive this.
class LentColumns {
public:
    LentColumns(ColumnsPool& pool, std::unique_ptr<Columns> columns) : pool_(&pool), columns_(std::move(columns)) {}
    LentColumns(LentColumns&&) noexcept = default;
    LentColumns& operator=(LentColumns&&) = delete;
    ~LentColumns();

    [[nodiscard]] Columns& operator*() const { return *columns_; }

private:
    ColumnsPool* pool_;
    std::unique_ptr<Columns> columns_;  // null once moved from
};

/// Any thread may take and give back.
class ColumnsPool {
public:
    /// Null where none of the shape waits.
    [[nodiscard]] std::unique_ptr<Columns> take(Shape shape) {
        const std::lock_guard lock(mutex_);
        auto& waiting = waiting_[shape];
        if (waiting.empty()) return nullptr;
        std::unique_ptr<Columns> result = std::move(waiting.back());
        waiting.pop_back();
        return result;
    }

    void give_back(std::unique_ptr<Columns> columns) {
        const std::lock_guard lock(mutex_);
        waiting_[columns->shape()].push_back(std::move(columns));
    }

private:
    std::mutex mutex_;
    std::map<Shape, std::vector<std::unique_ptr<Columns>>> waiting_;
};

inline LentColumns::~LentColumns() {
    if (columns_ != nullptr) pool_->give_back(std::move(columns_));
}

}  // namespace flutebook::engine
