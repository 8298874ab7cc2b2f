#include "host/plugin_worker/block_layout.hpp"

#include <algorithm>
#include <cstring>

namespace flutebook::plugin_worker {
namespace {

using contract::Axis;
using contract::RowSpan;

constexpr std::size_t cache_line = 8;  // doubles on 64 bytes

constexpr std::size_t place(BlockList list) {
    return static_cast<std::size_t>(list);
}

std::size_t whole_lines(std::size_t doubles) {
    return (doubles + cache_line - 1) / cache_line * cache_line;
}

// Doubles before the first column.
std::size_t head(std::size_t names) {
    return whole_lines((sizeof(BlockHeader) + names * sizeof(ColumnExtent) + sizeof(double) - 1) / sizeof(double));
}

std::size_t refused_doubles(std::size_t pitch) {
    return whole_lines(pitch * sizeof(std::uint32_t) / sizeof(double) + 1);
}

}  // namespace

NameAxes::NameAxes(const contract::Model& model) {
    const auto add = [&](BlockList list, Axis axis) {
        axes_[place(list)].push_back(axis);
        ++count_;
        ++(axis == Axis::order ? by_order_ : axis == Axis::ply ? by_ply_ : by_step_);
    };
    for (const auto& need : model.needs) add(BlockList::needs, need.axis);
    for (const auto& setting : model.settings) add(BlockList::settings, axis_of(setting.varies_by));
    for (const auto& provide : model.provides) add(BlockList::provides, provide.axis);
    for (const auto& line : model.lines) {
        add(BlockList::quantities, line.axis);
        add(BlockList::rates, line.axis);
    }
    for (std::size_t i = 0; i < model.losses.size(); ++i) add(BlockList::losses, Axis::step);
}

std::size_t NameAxes::bytes_for(const flutebook_block& block) const {
    const std::size_t columns = by_order_ + by_ply_ * block.plies + by_step_ * block.steps;
    return (head(count_) + columns * block.pitch + refused_doubles(block.pitch)) * sizeof(double);
}

BlockLayout::BlockLayout(const NameAxes& names, const flutebook_block& block)
    : plies_(block.plies), steps_(block.steps), pitch_(block.pitch) {
    std::size_t at = head(names.count());
    for (std::size_t list = 0; list < lists; ++list)
        for (const Axis axis : names.of(list)) {
            const std::uint32_t extent = axis == Axis::order ? 1 : axis == Axis::ply ? plies_ : steps_;
            columns_[list].push_back({static_cast<std::uint32_t>(at), extent});
            at += extent * pitch_;
        }
    refused_ = static_cast<std::uint32_t>(at);
}

bool BlockLayout::is_for(const flutebook_block& block) const {
    return block.plies == plies_ && block.steps == steps_ && block.pitch == pitch_;
}

void BlockLayout::write_to(BlockHeader& header, std::uint32_t number) const {
    header.layout = number;
    header.plies = plies_;
    header.steps = steps_;
    header.refused = refused_;
    header.pitch = pitch_;
    ColumnExtent* next = table(header);
    for (std::size_t list = 0; list < lists; ++list) {
        header.names[list] = static_cast<std::uint32_t>(columns_[list].size());
        next = std::copy(columns_[list].begin(), columns_[list].end(), next);
    }
}

void BlockLayout::copy_in(std::byte* memory, const flutebook_block& block, RowSpan rows) const {
    auto* const doubles = reinterpret_cast<double*>(memory);
    const auto copy = [&](BlockList list, const double* const* from) {
        const auto& columns = columns_[place(list)];
        for (std::size_t n = 0; n < columns.size(); ++n)
            for (std::size_t i = 0; i < columns[n].extent; ++i)
                std::copy_n(from[n] + i * pitch_ + rows.first, rows.count, doubles + columns[n].first + i * pitch_);
    };
    copy(BlockList::needs, block.needs);
    copy(BlockList::settings, block.settings);
}

void BlockLayout::copy_out(const std::byte* memory, const flutebook_block& block, RowSpan rows) const {
    const auto* const doubles = reinterpret_cast<const double*>(memory);
    const auto copy = [&](BlockList list, double* const* to) {
        const auto& columns = columns_[place(list)];
        for (std::size_t n = 0; n < columns.size(); ++n)
            for (std::size_t i = 0; i < columns[n].extent; ++i)
                std::copy_n(doubles + columns[n].first + i * pitch_, rows.count, to[n] + i * pitch_ + rows.first);
    };
    copy(BlockList::provides, block.provides);
    copy(BlockList::quantities, block.quantities);
    copy(BlockList::rates, block.rates);
    copy(BlockList::losses, block.losses);
    std::memcpy(block.refused + rows.first, doubles + refused_, rows.count * sizeof(std::uint32_t));
}

}  // namespace flutebook::plugin_worker
