#include "host/plugin_check/trial_block.hpp"

#include <fmt/format.h>
#include <sys/mman.h>

#include <algorithm>
#include <cmath>
#include <cstring>
#include <limits>
#include <new>

#include "host/contract/floating_point.hpp"
#include "host/sandbox/guarded.hpp"

namespace flutebook::plugin_check {
namespace {

constexpr std::size_t page_bytes = 4096;
constexpr std::size_t cache_line = 64;
constexpr std::uint64_t untouched = 0x7ff8'f107'eb00'c0deU;  // a NaN that no calculation gives
constexpr std::uint32_t untouched_refusal = 0xf107'eb00U;

std::size_t whole(std::size_t bytes, std::size_t unit) {
    return (bytes + unit - 1) / unit * unit;
}

double untouched_number() {
    double result = 0;
    std::memcpy(&result, &untouched, sizeof result);
    return result;
}

bool is_untouched(const double& number) {
    return std::memcmp(&number, &untouched, sizeof number) == 0;
}

bool same(double left, double right) {
    return std::memcmp(&left, &right, sizeof left) == 0 || (std::isnan(left) && std::isnan(right));
}

}  // namespace

bool operator==(const RowOutput& left, const RowOutput& right) {
    return left.refused == right.refused &&
           std::equal(left.numbers.begin(), left.numbers.end(), right.numbers.begin(), right.numbers.end(), same);
}

std::string result_name(const contract::Model& model, engine::Shape shape, std::size_t place) {
    std::string result;
    const auto pass = [&](const std::string& name, contract::Axis axis) {
        const std::size_t extent = shape.extent(axis);
        if (result.empty() && place < extent)
            result = axis == contract::Axis::order ? name : fmt::format("{} of {} {}", name, to_text(axis), place);
        place -= std::min(place, extent);
    };
    // Once the name is found, `place` has no meaning.
    for (const auto& provide : model.provides) pass(provide.name, provide.axis);
    for (const auto& line : model.lines) pass("the quantity of " + line.name, line.axis);
    for (const auto& line : model.lines) pass("the rate of " + line.name, line.axis);
    for (const auto& loss : model.losses) pass("the loss " + loss.cause, contract::Axis::step);
    return result;
}

TrialBlock::TrialBlock(const contract::Model& model, engine::Shape shape, std::size_t capacity, GuardPages guards)
    : evaluate_(model.evaluate), shape_(shape), capacity_(capacity), guards_(guards) {
    const std::size_t bytes = capacity * sizeof(double);
    // Without guards as in the engine: an odd number of cache lines apart, never a power of two.
    data_ = guards == GuardPages::none ? bytes : whole(bytes, page_bytes);
    pitch_ = guards == GuardPages::none ? whole(bytes, 2 * cache_line) + cache_line : data_ + page_bytes;
    if ((pitch_ & (pitch_ - 1)) == 0) pitch_ += page_bytes;
    name_slots(model);
    lay_out();
    point_block();
}

TrialBlock::~TrialBlock() {
    ::munmap(memory_, size_);
}

void TrialBlock::name_slots(const contract::Model& model) {
    const double missing = std::numeric_limits<double>::quiet_NaN();
    const auto add = [&](List list, const std::string& name, contract::Axis axis, double begins_as) {
        slots_[place_of(list)].push_back({name, shape_.extent(axis), begins_as});
    };
    for (const auto& need : model.needs) add(List::needs, need.name, need.axis, 0);
    for (const auto& setting : model.settings) add(List::settings, setting.name, axis_of(setting.varies_by), 0);
    for (const auto& provide : model.provides) add(List::provides, provide.name, provide.axis, missing);
    for (const auto& line : model.lines) {
        add(List::quantities, "the quantity of " + line.name, line.axis, 0);
        add(List::rates, "the rate of " + line.name, line.axis, 0);
    }
    for (const auto& loss : model.losses) add(List::losses, "the loss " + loss.cause, contract::Axis::step, 0);
}

void TrialBlock::lay_out() {
    const std::size_t lead = guards_ == GuardPages::none ? 0 : page_bytes;
    const std::size_t lead_in_page = guards_ == GuardPages::after ? data_ - capacity_ * sizeof(double) : 0;
    std::size_t bytes = 0;
    for (const auto& list : slots_)
        for (const Slot& slot : list) bytes += lead + slot.extent * pitch_;
    const std::size_t refused = lead + whole(capacity_ * sizeof(std::uint32_t), page_bytes) + lead;
    size_ = bytes + refused;
    const int access = guards_ == GuardPages::none ? PROT_READ | PROT_WRITE : PROT_NONE;
    void* memory = ::mmap(nullptr, size_, access, MAP_PRIVATE | MAP_ANONYMOUS, -1, 0);
    if (memory == MAP_FAILED) throw std::bad_alloc();
    memory_ = static_cast<std::byte*>(memory);

    std::byte* at = memory_;
    for (auto& list : slots_)
        for (Slot& slot : list) {
            at += lead;
            slot.first = reinterpret_cast<double*>(at + lead_in_page);
            for (std::size_t i = 0; guards_ != GuardPages::none && i < slot.extent; ++i)
                ::mprotect(at + i * pitch_, data_, PROT_READ | PROT_WRITE);
            at += slot.extent * pitch_;
        }
    lay_out_refused(at + lead);
}

void TrialBlock::lay_out_refused(std::byte* at) {
    const std::size_t bytes = capacity_ * sizeof(std::uint32_t);
    const std::size_t room = whole(bytes, page_bytes);
    if (guards_ != GuardPages::none) ::mprotect(at, room, PROT_READ | PROT_WRITE);
    refused_ = reinterpret_cast<std::uint32_t*>(guards_ == GuardPages::after ? at + room - bytes : at);
}

void TrialBlock::point_block() {
    for (std::size_t list = 0; list < lists; ++list)
        for (const Slot& slot : slots_[list]) pointers_[list].push_back(slot.first);
    const auto pointers = [&](List list) { return pointers_[place_of(list)].data(); };
    block_ = {sizeof(flutebook_block),
              0,
              static_cast<std::uint32_t>(shape_.plies),
              static_cast<std::uint32_t>(shape_.steps),
              pitch_ / sizeof(double),
              pointers(List::needs),
              pointers(List::settings),
              pointers(List::provides),
              pointers(List::quantities),
              pointers(List::rates),
              pointers(List::losses),
              refused_};
}

// Every column: its list, its slot, and where it starts.
template <typename Take>
void TrialBlock::each_column(const Take& take) const {
    for (std::size_t list = 0; list < lists; ++list)
        for (const Slot& slot : slots_[list])
            for (std::size_t i = 0; i < slot.extent; ++i) take(list, slot, slot.first + i * (pitch_ / sizeof(double)));
}

void TrialBlock::protect_inputs(int how) const {
    if (guards_ == GuardPages::none) return;
    each_column([&](std::size_t list, const Slot&, double* column) {
        if (!is_input(list)) return;
        auto* first = reinterpret_cast<std::byte*>(column);
        ::mprotect(first - reinterpret_cast<std::uintptr_t>(first) % page_bytes, data_, how);
    });
}

void TrialBlock::fill(const Group& rows) {
    protect_inputs(PROT_READ | PROT_WRITE);
    rows_ = rows.size();
    block_.rows = static_cast<std::uint32_t>(rows_);
    each_column([&](std::size_t list, const Slot&, double* column) {
        if (is_input(list)) std::fill_n(column, capacity_, untouched_number());
    });
    for (std::size_t r = 0; r < rows_; ++r) {
        const auto put = [&](List list, const std::vector<std::vector<double>>& values) {
            for (std::size_t n = 0; n < values.size(); ++n)
                for (std::size_t i = 0; i < values[n].size(); ++i) number(list, n, i, r) = values[n][i];
        };
        put(List::needs, rows[r]->needs);
        put(List::settings, rows[r]->settings);
    }
}

void TrialBlock::begin_results() {
    each_column([&](std::size_t list, const Slot& slot, double* column) {
        if (is_input(list)) return;
        if (guards_ != GuardPages::none) {
            auto* first = reinterpret_cast<std::byte*>(column);
            auto* first_in_page =
                reinterpret_cast<double*>(first - reinterpret_cast<std::uintptr_t>(first) % page_bytes);
            std::fill_n(first_in_page, data_ / sizeof(double), untouched_number());
        }
        std::fill_n(column, rows_, slot.begins_as);
    });
    std::fill_n(refused_, capacity_, untouched_refusal);
    std::fill_n(refused_, rows_, 0U);
}

CallOutcome TrialBlock::call() {
    begin_results();
    protect_inputs(PROT_READ);
    CallOutcome result;
    const contract::FloatingPointGuard guard;
    const auto evaluate = [&] {
        result.notes.begin();
        try {
            result.code = evaluate_(&block_);
        } catch (...) {
            result.threw = true;
        }
        result.notes.end();
    };
    if (guards_ == GuardPages::none)
        evaluate();
    else
        result.fault_address = sandbox::guarded(evaluate);
    // Again, because a call that was stopped did not reach the end().
    result.notes.end();
    result.changed = guard.change();
    return result;
}

RowOutput TrialBlock::written(std::size_t row) const {
    RowOutput result;
    each_column([&](std::size_t list, const Slot&, const double* column) {
        if (!is_input(list)) result.numbers.push_back(column[row]);
    });
    result.refused = refused_[row];
    return result;
}

std::size_t TrialBlock::extent(List list, std::size_t name) const {
    return slots_[place_of(list)][name].extent;
}

double& TrialBlock::number(List list, std::size_t name, std::size_t index, std::size_t row) {
    return slots_[place_of(list)][name].first[index * (pitch_ / sizeof(double)) + row];
}

double TrialBlock::number(List list, std::size_t name, std::size_t index, std::size_t row) const {
    return slots_[place_of(list)][name].first[index * (pitch_ / sizeof(double)) + row];
}

std::optional<std::string> TrialBlock::strayed() const {
    std::optional<std::string> where;
    each_column([&](std::size_t list, const Slot& slot, const double* column) {
        if (is_input(list) || where) return;
        const auto* first = reinterpret_cast<const std::byte*>(column);
        const auto* first_in_page =
            reinterpret_cast<const double*>(first - reinterpret_cast<std::uintptr_t>(first) % page_bytes);
        for (const double* at = first_in_page; at < first_in_page + data_ / sizeof(double) && !where; ++at)
            if ((at < column || at >= column + rows_) && !is_untouched(*at)) where = slot.name;
    });
    for (std::size_t r = rows_; r < capacity_ && !where; ++r)
        if (refused_[r] != untouched_refusal) where = "refused";
    return where;
}

std::optional<TrialBlock::Found> TrialBlock::find(std::uintptr_t address) const {
    const auto start = reinterpret_cast<std::uintptr_t>(memory_);
    if (address < start || address >= start + size_) return std::nullopt;
    Found result{"the first column", false, true};
    // The guard page between two columns belongs to the column that it protects, and the pages between two names to the
    // name before.
    const std::size_t before = guards_ == GuardPages::after ? 0 : pitch_ - data_;
    each_column([&](std::size_t list, const Slot& slot, const double* column) {
        const std::uintptr_t page_start = reinterpret_cast<std::uintptr_t>(column) / page_bytes * page_bytes;
        if (address < page_start - before) return;
        result = {slot.name, is_input(list), address < page_start || address >= page_start + data_};
    });
    if (address >= reinterpret_cast<std::uintptr_t>(refused_) / page_bytes * page_bytes)
        result = {"refused", false, true};
    return result;
}

}  // namespace flutebook::plugin_check
