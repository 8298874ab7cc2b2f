#include "host/plugin_check/row_checks.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "host/fields/units.hpp"
#include "host/plugin_check/trial_rows.hpp"
#include "host/sandbox/guarded.hpp"

namespace flutebook::plugin_check {
namespace {

using contract::Model;

constexpr double tolerance = 1e-9;  // as a share of the mass that came in

// The values of a provided name in a row, by axis index; empty where the model does not provide it.
std::vector<double> provided(const Model& model, const TrialRow& row, const RowOutput& written, const std::string& name,
                             const std::string& unit) {
    std::size_t place = 0;
    for (const auto& provide : model.provides) {
        const std::size_t extent = row.shape.extent(provide.axis);
        if (provide.name == name) {
            const auto conversion = fields::conversion(provide.unit, unit);
            std::vector<double> result;
            for (std::size_t i = 0; conversion && i < extent; ++i)
                result.push_back((*conversion)(written.numbers[place + i]));
            return result;
        }
        place += extent;
    }
    return {};
}

const std::vector<double>& known(const TrialRow& row, const std::string& name) {
    const auto& all = known_names();
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const KnownName& known_name) { return known_name.name == name; });
    return row.known[static_cast<std::size_t>(found - all.begin())];
}

double sum(const Model& model, const TrialRow& row, const RowOutput& written, const std::string& name) {
    std::vector<double> values = provided(model, row, written, name, "kg");
    if (values.empty()) values = known(row, name);
    double total = 0;
    for (const double value : values) total += value;
    return total;
}

}  // namespace

std::vector<Group> cut(const Group& group, std::size_t size) {
    std::vector<Group> result;
    for (std::size_t first = 0; first < group.size(); first += size) {
        const auto begin = group.begin() + static_cast<std::ptrdiff_t>(first);
        const auto length = static_cast<std::ptrdiff_t>(std::min(size, group.size() - first));
        result.emplace_back(begin, begin + length);
    }
    return result;
}

Group repeated(const Group& group, std::size_t size) {
    Group result;
    while (result.size() < size) result.push_back(group[result.size() % group.size()]);
    return result;
}

std::size_t capacity_for(std::size_t rows) {
    return (rows + 7) / 8 * 8;
}

CallOutcome call(TrialBlock& trial_block, const Group& block) {
    trial_block.fill(block);
    const std::string what = "evaluating " + block.front()->name +
                             (block.size() > 1 ? fmt::format(" and {} more rows", block.size() - 1) : "");
    const sandbox::CurrentTask doing(what);
    return trial_block.call();
}

std::vector<RowOutput> evaluate(const Model& model, const Group& group, std::size_t size) {
    std::vector<RowOutput> result;
    TrialBlock trial_block(model, group.front()->shape, capacity_for(std::min(group.size(), size)), GuardPages::none);
    for (const Group& block : cut(group, size)) {
        static_cast<void>(call(trial_block, block));
        for (std::size_t r = 0; r < block.size(); ++r) result.push_back(trial_block.written(r));
    }
    return result;
}

Violation difference(const Model& model, const TrialRow& row, const RowOutput& first, const RowOutput& second) {
    if (first == second) return std::nullopt;
    if (first.refused != second.refused) return fmt::format("once refused a row and once did not: {}", row.name);
    for (std::size_t i = 0; i < first.numbers.size(); ++i)
        if (!(RowOutput{{first.numbers[i]}, 0} == RowOutput{{second.numbers[i]}, 0}))
            return fmt::format("gave {} as {} and then as {}: {}", result_name(model, row.shape, i), first.numbers[i],
                               second.numbers[i], row.name);
    return std::nullopt;
}

Violation wrong_answer(const Model& model, TrialBlock& trial_block, const Group& block) {
    const CallOutcome outcome = call(trial_block, block);
    const std::string& name = block.front()->name;
    if (outcome.threw) return fmt::format("threw an exception out of evaluate: {}", name);
    if (outcome.code != 0) return fmt::format("returned the error code {}: {}", outcome.code, name);
    for (std::size_t r = 0; r < block.size(); ++r)
        if (const std::uint32_t refused = trial_block.written(r).refused; refused > model.reasons.size())
            return fmt::format("refused a row for reason {}, but declares {} reasons: {}", refused,
                               model.reasons.size(), block[r]->name);
    return std::nullopt;
}

Violation wrong_number(const Model& model, const TrialRow& row, const RowOutput& written) {
    if (written.refused != 0) return std::nullopt;
    for (std::size_t i = 0; i < written.numbers.size(); ++i)
        if (!std::isfinite(written.numbers[i]))
            return fmt::format("{} {}: {}",
                               std::isnan(written.numbers[i]) ? "left without a number" : "gave an infinite",
                               result_name(model, row.shape, i), row.name);
    return std::nullopt;
}

Violation wrong_range(const Model& model, const TrialRow& row, const RowOutput& written) {
    if (written.refused != 0) return std::nullopt;
    std::size_t place = 0;
    for (const auto& provide : model.provides)
        for (std::size_t i = 0; i < row.shape.extent(provide.axis); ++i, ++place)
            if (!provide.range.holds(written.numbers[place]))
                return fmt::format("gave {} as {}, outside its declared range {} to {}: {}",
                                   result_name(model, row.shape, place), written.numbers[place], provide.range.low,
                                   provide.range.high, row.name);
    return std::nullopt;
}

Violation wrong_recovery(const Model& model, const TrialRow& row, const RowOutput& written) {
    if (written.refused != 0) return std::nullopt;
    std::size_t quantity = 0;
    for (const auto& provide : model.provides) quantity += row.shape.extent(provide.axis);
    std::size_t rate = quantity;
    for (const auto& line : model.lines) rate += row.shape.extent(line.axis);
    for (const auto& line : model.lines)
        for (std::size_t i = 0; i < row.shape.extent(line.axis); ++i, ++quantity, ++rate)
            if (line.cost_class == contract::CostClass::recovery &&
                written.numbers[quantity] * written.numbers[rate] > 0)
                return fmt::format("charges {} of {} as a recovery, which is income and must not be above zero: {}",
                                   written.numbers[quantity] * written.numbers[rate], line.name, row.name);
    return std::nullopt;
}

Violation wrong_balance(const Model& model, const TrialRow& row, const RowOutput& written) {
    if (model.losses.empty() || written.refused != 0) return std::nullopt;
    const double came_in = sum(model, row, written, "paper.issued") + sum(model, row, written, "adhesive.dry");
    const double boxes = known(row, "order.quantity")[0] * known(row, "box.area")[0];
    double left = boxes * known(row, "board.grammage")[0] / 1000;
    const std::size_t first = written.numbers.size() - model.losses.size() * row.shape.steps;
    for (std::size_t i = first; i < written.numbers.size(); ++i) {
        left += written.numbers[i];
        if (!(written.numbers[i] >= -tolerance * came_in))
            return fmt::format("shed a negative mass, {} kg as {}: {}", written.numbers[i],
                               result_name(model, row.shape, i), row.name);
    }
    if (std::fabs(came_in - left) <= tolerance * came_in) return std::nullopt;
    return fmt::format("accounted for {:.6g} kg {} than the {:.6g} kg issued: {}", std::fabs(came_in - left),
                       came_in > left ? "less" : "more", came_in, row.name);
}

}  // namespace flutebook::plugin_check
