#include "host/engine/costing/columns.hpp"

#include <algorithm>
#include <cstdint>
#include <limits>
#include <memory>

#include "host/engine/facts.hpp"

namespace flutebook::engine {
namespace {

constexpr std::size_t doubles_on_line = 8;  // of 64 bytes

// An odd number of cache lines: columns are never a power of two apart, and do not fight for the same places of the
// cache.
std::size_t pitch_for(std::size_t rows) {
    return ((rows + doubles_on_line - 1) / doubles_on_line | 1) * doubles_on_line;
}

}  // namespace

Slot Slots::add(contract::Axis axis) {
    axes.push_back(axis);
    return axes.size() - 1;
}

Slot Slots::source_slot(const Source& source) {
    switch (source.kind) {
        case Source::Kind::provided:
            return models[source.model].provides[source.index];
        case Source::Kind::setting:
            return of_settings[source.model][source.index];
        case Source::Kind::fact:
            break;
    }
    if (of_facts[source.index] == none) of_facts[source.index] = add(facts()[source.index].name.axis);
    return of_facts[source.index];
}

Slot Slots::take(const Link& link, contract::Axis axis, std::vector<Converted>& conversions) {
    const Slot from = source_slot(link.source);
    if (link.conversion.is_identity()) return from;
    const Slot to = add(axis);
    conversions.push_back({from, to, link.conversion});
    return to;
}

Slots::Slots(const Graph& graph) : of_facts(facts().size(), none) {
    // Slots that models write come first: slots of needs refer to them.
    for (const contract::Model& model : graph.models) {
        ModelSlots& result = models.emplace_back();
        for (const contract::Name& provide : model.provides) result.provides.push_back(add(provide.axis));
        for (const contract::Line& line : model.lines) {
            result.quantities.push_back(add(line.axis));
            result.rates.push_back(add(line.axis));
        }
        for (std::size_t i = 0; i < model.losses.size(); ++i) result.losses.push_back(add(contract::Axis::step));
        auto& setting_slots = of_settings.emplace_back();
        for (const contract::Setting& setting : model.settings)
            setting_slots.push_back(add(contract::axis_of(setting.varies_by)));
    }
    for (std::size_t m = 0; m < graph.models.size(); ++m) {
        ModelSlots& result = models[m];
        for (std::size_t n = 0; n < graph.needs[m].size(); ++n)
            result.needs.push_back(take(graph.needs[m][n], graph.models[m].needs[n].axis, result.conversions));
        for (std::size_t s = 0; s < graph.settings[m].size(); ++s) {
            const auto& replaced = graph.settings[m][s];
            result.settings.push_back(
                replaced ? take(*replaced, contract::axis_of(graph.models[m].settings[s].varies_by), result.conversions)
                         : of_settings[m][s]);
        }
    }
    const auto fact = [&](const char* name) { return source_slot({Source::Kind::fact, 0, fact_index(name)}); };
    fed = take(graph.host.fed, contract::Axis::step, host_conversions);
    good = take(graph.host.good, contract::Axis::step, host_conversions);
    web_length = take(graph.host.web_length, contract::Axis::order, host_conversions);
    web_area = take(graph.host.web_area, contract::Axis::order, host_conversions);
    issued = take(graph.host.issued, contract::Axis::ply, host_conversions);
    adhesive = take(graph.host.adhesive, contract::Axis::order, host_conversions);
    run_waste = take(graph.host.run_waste, contract::Axis::step, host_conversions);
    setup_sheets = take(graph.host.setup_sheets, contract::Axis::step, host_conversions);
    order_change = take(graph.host.order_change, contract::Axis::order, host_conversions);
    roll_loss = take(graph.host.roll_loss, contract::Axis::order, host_conversions);
    for (const char* name : cost_names) costs.push_back(of_facts[fact_index(name)]);
    quantity = fact("order.quantity");
    box_area = fact("box.area");
    sheet_area = fact("sheet.area");
    board_grammage = fact("board.grammage");
    parting = fact("step.parting");
}

Columns::Columns(const Slots& slots, Shape shape, std::size_t rows)
    : slots_(&slots), shape_(shape), pitch_(pitch_for(rows)) {
    std::size_t columns = 0;
    std::vector<std::size_t> first_column;
    for (const contract::Axis axis : slots.axes) {
        first_column.push_back(columns);
        columns += shape.extent(axis);
    }
    memory_.assign(columns * pitch_ + doubles_on_line, 0.0);
    void* at = memory_.data();
    std::size_t room = memory_.size() * sizeof(double);
    auto* base =
        static_cast<double*>(std::align(doubles_on_line * sizeof(double), columns * pitch_ * sizeof(double), at, room));
    for (const std::size_t column : first_column) first_.push_back(base + column * pitch_);

    const auto pick = [&](const std::vector<Slot>& item, auto& pointers) {
        for (const Slot slot : item) pointers.push_back(first_[slot]);
    };
    for (const ModelSlots& model : slots.models) {
        Pointers& result = pointers_.emplace_back();
        pick(model.needs, result.needs);
        pick(model.settings, result.settings);
        pick(model.provides, result.provides);
        pick(model.quantities, result.quantities);
        pick(model.rates, result.rates);
        pick(model.losses, result.losses);
        // Slots made the results of a model one behind the other: what it provides, then lines and losses.
        const auto append = [&](ColumnRange& range, const std::vector<Slot>& results) {
            for (const Slot slot : results) {
                if (range.count == 0) range.first = first_[slot];
                range.count += extent(slot);
            }
        };
        append(result.provided, model.provides);
        append(result.charged_and_lost, model.quantities);
        append(result.charged_and_lost, model.rates);
        append(result.charged_and_lost, model.losses);
        refused_.emplace_back(rows, 0U);
    }
}

void Columns::fill(const ColumnRange& range, std::size_t rows, double value) const {
    if (rows == most_rows()) {
        std::fill_n(range.first, range.count * pitch_, value);
        return;
    }
    for (std::size_t i = 0; i < range.count; ++i) std::fill_n(range.first + i * pitch_, rows, value);
}

void Columns::begin_results(std::size_t model, std::size_t rows) {
    fill(pointers_[model].provided, rows, std::numeric_limits<double>::quiet_NaN());
    fill(pointers_[model].charged_and_lost, rows, 0);
    std::fill_n(refused_[model].begin(), rows, 0U);
}

const flutebook_block& Columns::block(std::size_t model, std::size_t rows) {
    Pointers& pointers = pointers_[model];
    pointers.block = {sizeof(flutebook_block),
                      static_cast<std::uint32_t>(rows),
                      static_cast<std::uint32_t>(shape_.plies),
                      static_cast<std::uint32_t>(shape_.steps),
                      pitch_,
                      pointers.needs.data(),
                      pointers.settings.data(),
                      pointers.provides.data(),
                      pointers.quantities.data(),
                      pointers.rates.data(),
                      pointers.losses.data(),
                      refused_[model].data()};
    return pointers.block;
}

}  // namespace flutebook::engine
