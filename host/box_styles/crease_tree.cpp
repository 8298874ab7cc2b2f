// The creases of a blank as a tree: which cell hangs on which.
#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <utility>

#include "host/base/quoted_text.hpp"
#include "host/box_styles/piece_reader.hpp"

namespace flutebook::box_styles {

namespace {

class CreaseTree {
public:
    CreaseTree(const fields::Field& map, StylePiece& piece) : map_(map), piece_(piece), group_(piece.cells.size()) {
        std::iota(group_.begin(), group_.end(), std::size_t{0});
    }

    bool hang() {
        const auto root = find_root();
        join_groups();
        if (!root) return false;
        hang_from(*root);
        check_reached();
        if (is_fit_) put_in_order();
        return is_fit_;
    }

private:
    void complain(const StyleCell& cell, const std::string& text) {
        map_.complain_at(cell.place, text);
        is_fit_ = false;
    }

    // The cell that no step folds.
    std::optional<std::size_t> find_root() {
        std::vector<bool> is_folded(piece_.cells.size());
        for (const auto& step : piece_.fold)
            for (const std::size_t cell : step) is_folded[cell] = true;
        std::optional<std::size_t> root;
        for (std::size_t i = 0; i < is_folded.size(); ++i) {
            if (is_folded[i]) continue;
            if (root)
                complain(piece_.cells[i],
                         fmt::format("a cell that is left out of `fold`: found {} and {}, expected "
                                     "one alone that stays",
                                     base::shown(piece_.cells[*root].name), base::shown(piece_.cells[i].name)));
            else
                root = i;
        }
        if (!root) {
            map_.complain("every cell is folded: expected one that stays, named in no step of `fold`");
            is_fit_ = false;
        }
        return root;
    }

    std::size_t group_of(std::size_t cell) const {
        while (group_[cell] != cell) cell = group_[cell];
        return cell;
    }

    void join_groups() {
        for (const auto& border : piece_.borders) {
            if (border.kind != StyleBorder::Kind::crease) continue;
            const std::size_t first = group_of(border.first), second = group_of(border.second);
            if (first == second)
                complain(piece_.cells[border.second],
                         fmt::format("a ring of creases: {} and {} hang together already by other cells, expected a "
                                     "cut between two of the ring",
                                     base::shown(piece_.cells[border.first].name),
                                     base::shown(piece_.cells[border.second].name)));
            group_[second] = first;
        }
    }

    void hang_from(std::size_t root) {
        order_.push_back(root);
        is_reached_.assign(piece_.cells.size(), false);
        is_reached_[root] = true;
        piece_.cells[root].angle_deg = 0;
        for (std::size_t at = 0; at < order_.size(); ++at)
            for (const auto& border : piece_.borders) {
                if (border.kind != StyleBorder::Kind::crease) continue;
                if (border.first == order_[at]) reach(border.second, order_[at]);
                if (border.second == order_[at]) reach(border.first, order_[at]);
            }
    }

    void reach(std::size_t cell, std::size_t parent) {
        if (is_reached_[cell]) return;
        is_reached_[cell] = true;
        piece_.cells[cell].parent = parent;
        order_.push_back(cell);
    }

    void check_reached() {
        for (std::size_t i = 0; i < piece_.cells.size(); ++i)
            if (!is_reached_[i])
                complain(piece_.cells[i],
                         fmt::format("a cell that hangs on no crease: {} is not joined by creases to {}, which stays",
                                     base::shown(piece_.cells[i].name), base::shown(piece_.cells[order_[0]].name)));
    }

    // A parent before its children; every index follows.
    void put_in_order() {
        std::vector<std::size_t> now_at(order_.size());
        for (std::size_t i = 0; i < order_.size(); ++i) now_at[order_[i]] = i;
        std::vector<StyleCell> cells;
        for (const std::size_t cell : order_) cells.push_back(std::move(piece_.cells[cell]));
        piece_.cells = std::move(cells);
        for (auto& cell : piece_.cells)
            if (cell.parent) cell.parent = now_at[*cell.parent];
        for (auto& border : piece_.borders) border = {now_at[border.first], now_at[border.second], border.kind};
        for (auto& step : piece_.fold)
            for (auto& cell : step) cell = now_at[cell];
        for (auto& join : piece_.joins) join = {now_at[join.cell], now_at[join.partner]};
        for (auto& span : piece_.inside) {
            if (!span) continue;
            span->from = now_at[span->from];
            if (span->to) span->to = now_at[*span->to];
        }
    }

    const fields::Field& map_;
    StylePiece& piece_;
    std::vector<std::size_t> group_;  // each cell's, up to one that is its own
    std::vector<std::size_t> order_;
    std::vector<bool> is_reached_;
    bool is_fit_ = true;
};

}  // namespace

bool hang_cells(const fields::Field& map, StylePiece& piece) {
    return CreaseTree(map, piece).hang();
}

}  // namespace flutebook::box_styles
