// See model_bench.hpp. One block is built from the rows, evaluated, and read back by name.
#include "tests/support/model_bench.hpp"

#include <dlfcn.h>
#include <fmt/format.h>

#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <limits>
#include <memory>
#include <stdexcept>
#include <utility>

namespace flutebook::fixture {

namespace {

constexpr std::size_t alignment = 64;
constexpr std::size_t per_line = alignment / sizeof(double);

template <typename T>
const T& at(const flutebook_span& span, std::uint32_t index) {
    const auto* bytes = static_cast<const std::byte*>(span.at);
    return *reinterpret_cast<const T*>(bytes + std::size_t{index} * span.stride);
}

std::uint32_t axis_of(const flutebook_name& name) {
    return name.axis;
}
std::uint32_t axis_of(const flutebook_line& line) {
    return line.axis;
}
std::uint32_t axis_of(const flutebook_loss&) {
    return FLUTEBOOK_STEP;
}
std::uint32_t axis_of(const flutebook_setting& setting) {
    if (setting.varies_by == FLUTEBOOK_BY_MACHINE) return FLUTEBOOK_STEP;
    const bool by_ply = setting.varies_by == FLUTEBOOK_BY_PAPER || setting.varies_by == FLUTEBOOK_BY_FLUTE;
    return by_ply ? FLUTEBOOK_PLY : FLUTEBOOK_ORDER;
}

struct Shape {
    std::uint32_t rows, plies, steps;
    std::size_t pitch;

    [[nodiscard]] std::size_t length(std::uint32_t axis) const {
        if (axis == FLUTEBOOK_ORDER) return 1;
        return axis == FLUTEBOOK_PLY ? plies : steps;
    }
};

Shape shape_of(const std::vector<BenchRow>& rows) {
    if (rows.empty()) throw std::invalid_argument("model_bench: a block needs a row: found none");
    const BenchRow& first = rows.front();
    for (const BenchRow& row : rows)
        if (row.plies != first.plies || row.steps != first.steps)
            throw std::invalid_argument("model_bench: rows of one block have one shape: found two");
    const std::size_t pitch = (rows.size() + per_line - 1) / per_line * per_line;
    return {static_cast<std::uint32_t>(rows.size()), first.plies, first.steps, pitch};
}

// The columns of one list of the description (needs, provides, ...), each on 64 bytes.
template <typename T>
class Columns {
public:
    Columns(const flutebook_span& span, const Shape& shape, double initial) : shape_(shape) {
        for (std::uint32_t i = 0; i < span.count; ++i) {
            const std::size_t length = shape.length(axis_of(at<T>(span, i)));
            auto* column = static_cast<double*>(std::aligned_alloc(alignment, length * shape.pitch * sizeof(double)));
            if (column == nullptr) throw std::bad_alloc();
            store_.emplace_back(column, &std::free);
            std::uninitialized_fill_n(column, length * shape.pitch, initial);
            lengths_.push_back(length);
            columns_.push_back(column);
            read_only_.push_back(column);
        }
    }

    void put(std::uint32_t name, std::uint32_t row, const std::vector<double>& values) {
        for (std::size_t i = 0; i < values.size(); ++i) columns_[name][i * shape_.pitch + row] = values[i];
    }
    [[nodiscard]] std::vector<double> take(std::uint32_t name, std::uint32_t row) const {
        std::vector<double> values(lengths_[name]);
        for (std::size_t i = 0; i < values.size(); ++i) values[i] = columns_[name][i * shape_.pitch + row];
        return values;
    }
    [[nodiscard]] std::size_t length(std::uint32_t name) const { return lengths_[name]; }
    [[nodiscard]] double* const* written() const { return columns_.data(); }
    [[nodiscard]] const double* const* read() const { return read_only_.data(); }

private:
    Shape shape_;
    std::vector<std::unique_ptr<double, decltype(&std::free)>> store_;
    std::vector<std::size_t> lengths_;
    std::vector<double*> columns_;
    std::vector<const double*> read_only_;
};

void check_given(const std::string& name, const std::vector<double>& values, std::size_t length, double low,
                 double high) {
    if (values.size() != length)
        throw std::invalid_argument(
            fmt::format("model_bench: {}: wrong length: found {}; give {}", name, values.size(), length));
    for (double value : values)
        if (!(value >= low && value <= high))
            throw std::invalid_argument(
                fmt::format("model_bench: {}: out of range: found {}; give {} to {}", name, value, low, high));
}

void put_needs(const flutebook_span& span, Columns<flutebook_name>& columns, const BenchRow& row, std::uint32_t r) {
    for (std::uint32_t i = 0; i < span.count; ++i) {
        const auto& need = at<flutebook_name>(span, i);
        const auto found = row.facts.find(need.name);
        if (found == row.facts.end())
            throw std::invalid_argument(fmt::format("model_bench: {}: missing: found none; give it", need.name));
        check_given(need.name, found->second.all(), columns.length(i), need.low, need.high);
        columns.put(i, r, found->second.all());
    }
}

void put_settings(const flutebook_span& span, Columns<flutebook_setting>& columns, const BenchRow& row,
                  std::uint32_t r) {
    std::size_t used = 0;
    for (std::uint32_t i = 0; i < span.count; ++i) {
        const auto& setting = at<flutebook_setting>(span, i);
        const auto found = row.settings.find(setting.name);
        if (found == row.settings.end() && setting.required != 0)
            throw std::invalid_argument(
                fmt::format("model_bench: {}: has no default: found none; give it", setting.name));
        std::vector<double> values(columns.length(i), setting.initial);
        if (found != row.settings.end()) {
            values = found->second.all();
            ++used;
        }
        check_given(setting.name, values, columns.length(i), setting.low, setting.high);
        columns.put(i, r, values);
    }
    if (used != row.settings.size())
        throw std::invalid_argument("model_bench: settings: one is unknown to the model; give only its own");
}

void check_made(const std::string& name, const std::vector<double>& values, double low, double high) {
    for (double value : values)
        if (!(value >= low && value <= high))
            throw std::logic_error(
                fmt::format("{}: the model's result is not within {} to {}: found {}", name, low, high, value));
}

constexpr double most = std::numeric_limits<double>::max();

double sum_of_products(const std::vector<double>& left, const std::vector<double>& right) {
    double sum = 0;
    for (std::size_t i = 0; i < left.size(); ++i) sum += left[i] * right[i];
    return sum;
}

// What came out of one block, still in columns.
struct Made {
    Columns<flutebook_name> provides;
    Columns<flutebook_line> quantities, rates;
    Columns<flutebook_loss> losses;
    std::vector<std::uint32_t> refused;
};

BenchResult read_row(const flutebook_model& model, const Made& built, std::uint32_t row) {
    BenchResult result;
    for (std::uint32_t i = 0; i < model.provides.count; ++i) {
        const auto& name = at<flutebook_name>(model.provides, i);
        const auto& values = result.provides[name.name] = built.provides.take(i, row);
        check_made(name.name, values, name.low, name.high);
    }
    for (std::uint32_t i = 0; i < model.lines.count; ++i) {
        const auto& line = at<flutebook_line>(model.lines, i);
        const auto& [quantity, rate] =
            result.lines[line.name] = {built.quantities.take(i, row), built.rates.take(i, row)};
        check_made(line.name, quantity, -most, most);
        check_made(line.name, rate, -most, most);
    }
    for (std::uint32_t i = 0; i < model.losses.count; ++i) {
        const char* cause = at<flutebook_loss>(model.losses, i).cause;
        check_made(cause, result.losses[cause] = built.losses.take(i, row), -most, most);
    }
    if (built.refused[row] != 0) result.refused = at<const char*>(model.reasons, built.refused[row] - 1);
    return result;
}

}  // namespace

double BenchLine::amount() const {
    return sum_of_products(quantity, rate);
}

double BenchResult::amount() const {
    double sum = 0;
    for (const auto& [name, line] : lines) sum += line.amount();
    return sum;
}

ModelBench::ModelBench(const std::string& id) : model_(nullptr) {
    const std::string file = std::string(FLUTEBOOK_PLUGIN_DIR) + "/" + id + ".so";
    void* library = dlopen(file.c_str(), RTLD_NOW | RTLD_LOCAL);
    if (library == nullptr) throw std::runtime_error(fmt::format("{}: cannot be opened: {}", file, dlerror()));
    model_ = static_cast<const flutebook_model*>(dlsym(library, "flutebook_plugin"));
    if (model_ == nullptr) throw std::runtime_error(fmt::format("{}: shows no model: {}", file, dlerror()));
}

BenchResult ModelBench::evaluate(const BenchRow& row) const {
    return evaluate(std::vector<BenchRow>{row}).front();
}

std::vector<BenchResult> ModelBench::evaluate(const std::vector<BenchRow>& rows) const {
    const Shape shape = shape_of(rows);
    const double unset = std::numeric_limits<double>::quiet_NaN();
    Columns<flutebook_name> needs(model_->needs, shape, 0);
    Columns<flutebook_setting> settings(model_->settings, shape, 0);
    for (std::uint32_t r = 0; r < shape.rows; ++r) {
        put_needs(model_->needs, needs, rows[r], r);
        put_settings(model_->settings, settings, rows[r], r);
    }
    Made result{Columns<flutebook_name>(model_->provides, shape, unset),
                Columns<flutebook_line>(model_->lines, shape, 0), Columns<flutebook_line>(model_->lines, shape, 0),
                Columns<flutebook_loss>(model_->losses, shape, 0), std::vector<std::uint32_t>(shape.rows, 0)};
    flutebook_block block{sizeof(flutebook_block),
                          shape.rows,
                          shape.plies,
                          shape.steps,
                          shape.pitch,
                          needs.read(),
                          settings.read(),
                          result.provides.written(),
                          result.quantities.written(),
                          result.rates.written(),
                          result.losses.written(),
                          result.refused.data()};
    if (const std::uint32_t fault = model_->evaluate(&block); fault != 0)
        throw std::logic_error(fmt::format("{}: faulted its block: found {}", model_->id, fault));
    std::vector<BenchResult> results;
    for (std::uint32_t r = 0; r < shape.rows; ++r) results.push_back(read_row(*model_, result, r));
    return results;
}

BenchRow with_provided(BenchRow row, const BenchResult& result) {
    for (const auto& [name, values] : result.provides) row.facts.insert_or_assign(name, Numbers(values));
    return row;
}

}  // namespace flutebook::fixture
