// A model is pure, so a row gives the same bits in any block: if one row stops a block, the others are evaluated again
// without it.
#include "host/quoting/moved_rows.hpp"

#include <algorithm>
#include <map>
#include <utility>
#include <vector>

namespace flutebook::quoting {

namespace {

using engine::Outcome;

bool is_costed(const Outcome& outcome) {
    return outcome.state == Outcome::State::costed;
}

class MovedBlocks {
public:
    MovedBlocks(const engine::Blocks& blocks, std::span<const MovedRow> rows, const ReadMoved& read)
        : blocks_(blocks), rows_(rows), read_(read) {}

    // Of one shape: indices of rows.
    void run(std::span<const std::size_t> indices) {
        const std::size_t rows_of_block = blocks_.rows_of_block();
        for (std::size_t first = 0; first < indices.size(); first += rows_of_block)
            run_block(indices.subspan(first, std::min(rows_of_block, indices.size() - first)));
    }

private:
    void run_block(std::span<const std::size_t> indices) {
        rows_of_block_.clear();
        moves_.clear();
        for (const std::size_t i : indices) {
            rows_of_block_.push_back(rows_[i].row);
            moves_.push_back(rows_[i].move);
        }
        outcomes_.assign(indices.size(), Outcome{});
        const engine::Row& row = rows_of_block_.front();
        const engine::LentColumns columns = blocks_.columns({row.plies(), row.steps()});
        if (blocks_.run_moved(*columns, rows_of_block_, moves_, outcomes_)) return run_halves(indices);
        std::vector<std::size_t> left;
        for (std::size_t r = 0; r < indices.size(); ++r)
            if (is_costed(outcomes_[r])) left.push_back(indices[r]);
        if (left.size() < indices.size()) return left.empty() ? void() : run_block(left);
        for (std::size_t r = 0; r < indices.size(); ++r) read_(*columns, r, indices[r]);
    }

    // A fault may be of any row: a model that fails at a block does not say at which.
    void run_halves(std::span<const std::size_t> indices) {
        if (indices.size() == 1) return;
        run_block(indices.first(indices.size() / 2));
        run_block(indices.subspan(indices.size() / 2));
    }

    const engine::Blocks& blocks_;
    std::span<const MovedRow> rows_;
    const ReadMoved& read_;
    std::vector<engine::Row> rows_of_block_;
    std::vector<std::optional<engine::MovedSetting>> moves_;
    std::vector<Outcome> outcomes_;
};

}  // namespace

// A block holds first pieces of sets, or none.
void read_moved_rows(const engine::Blocks& blocks, std::span<const MovedRow> rows, const ReadMoved& read) {
    std::map<std::pair<engine::Shape, bool>, std::vector<std::size_t>> by_shape;
    for (std::size_t i = 0; i < rows.size(); ++i)
        by_shape[{{rows[i].row.plies(), rows[i].row.steps()}, rows[i].row.order->piece.is_first()}].push_back(i);
    MovedBlocks moved(blocks, rows, read);
    for (const auto& [shape, indices] : by_shape) moved.run(indices);
}

}  // namespace flutebook::quoting
