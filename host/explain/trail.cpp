#include "host/explain/trail.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <tuple>
#include <utility>

#include "host/base/errors.hpp"
#include "host/engine/facts.hpp"
#include "host/explain/movers.hpp"
#include "host/plant/machine_list.hpp"

namespace flutebook::explain {
namespace {

// Walks one row down from a charged line.
class TrailWalk {
public:
    TrailWalk(const engine::Engine& engine, const engine::Row& row)
        : blocks_(engine.blocks()), row_(row), columns_(blocks_.columns_of(row)), movers_(blocks_, row) {}

    std::vector<Trail> of_line(const std::string& name) {
        std::vector<Trail> result;
        for (std::size_t m = 0; m < graph().models.size(); ++m)
            for (std::size_t l = 0; l < graph().models[m].lines.size(); ++l) {
                if (graph().models[m].lines[l].name != name) continue;
                const engine::ModelSlots& slots = blocks_.slots().models[m];
                for (std::size_t i = 0; i < columns_.extent(slots.quantities[l]); ++i) add_line(result, m, l, i);
            }
        return result;
    }

private:
    const engine::Graph& graph() const { return blocks_.graph(); }
    double number(engine::Slot slot, std::size_t index) const { return *columns_.column(slot, index); }

    void add_line(std::vector<Trail>& result, std::size_t m, std::size_t l, std::size_t index) {
        const contract::Line& line = graph().models[m].lines[l];
        const engine::Slot quantity = blocks_.slots().models[m].quantities[l];
        const engine::Slot rate = blocks_.slots().models[m].rates[l];
        const Money amount = Money::of(number(quantity, index), number(rate, index)).value_or(Money{});
        if (amount == Money{}) return;
        trail_ = {{}, number(quantity, index), number(rate, index)};
        seen_.clear();
        trail_.figures.push_back({TracedFigure::Kind::amount,
                                  line.name,
                                  place_name(line.axis, index),
                                  amount.to_double(),
                                  "money",
                                  graph().models[m].id,
                                  line.title,
                                  {},
                                  {}});
        trail_.figures[0].inputs = figures_of(m, movers_.of(m, {{quantity, index}, {rate, index}}));
        result.push_back(std::move(trail_));
    }

    std::string place_name(contract::Axis axis, std::size_t index) const {
        const plant::Plant& plant = *row_.order->plant;
        if (axis == contract::Axis::order) return {};
        if (axis == contract::Axis::ply)
            return fmt::format("ply {} {}", index + 1, plant.papers[row_.order->layout->board.plies[index].paper].code);
        return fmt::format("step {} {}", index, plant::machine_code(plant, engine::machine_index(row_, index)));
    }

    std::vector<std::size_t> figures_of(std::size_t model, const std::vector<ModelInput>& inputs) {
        std::vector<std::size_t> result;
        for (const ModelInput& input : inputs) {
            const engine::Source source = source_of(model, input);
            const std::size_t figure = figure_of(source, input.index);
            if (std::find(result.begin(), result.end(), figure) == result.end()) result.push_back(figure);
        }
        return result;
    }

    engine::Source source_of(std::size_t model, const ModelInput& input) const {
        if (!input.is_setting) return graph().needs[model][input.at].source;
        const auto& replaced = graph().settings[model][input.at];
        return replaced ? replaced->source : engine::Source{engine::Source::Kind::setting, model, input.at};
    }

    std::size_t figure_of(const engine::Source& source, std::size_t index) {
        const auto key = std::tuple(source.kind, source.model, source.index, index);
        if (const auto found = seen_.find(key); found != seen_.end()) return found->second;
        const std::size_t at = trail_.figures.size();
        seen_[key] = at;
        trail_.figures.emplace_back();
        TracedFigure result = describe(source, index);
        if (source.kind == engine::Source::Kind::provided) {
            const engine::Slot slot = blocks_.slots().models[source.model].provides[source.index];
            result.inputs = figures_of(source.model, movers_.of(source.model, {{slot, index}}));
        }
        if (source.kind == engine::Source::Kind::setting) result.inputs = deciders_of(source, index);
        trail_.figures[at] = std::move(result);
        return at;
    }

    TracedFigure describe(const engine::Source& source, std::size_t index) {
        if (source.kind == engine::Source::Kind::fact) {
            const engine::Fact& fact = engine::facts()[source.index];
            engine::FactOrigin from = engine::origin(fact, row_, index);
            return {TracedFigure::Kind::fact,
                    fact.name.name,
                    place_name(fact.name.axis, index),
                    number(blocks_.slots().of_facts[source.index], index),
                    fact.name.unit,
                    "",
                    std::move(from.how),
                    std::move(from.places),
                    {}};
        }
        const contract::Model& model = graph().models[source.model];
        if (source.kind == engine::Source::Kind::provided) {
            const contract::Name& name = model.provides[source.index];
            return {TracedFigure::Kind::provided,
                    name.name,
                    place_name(name.axis, index),
                    number(blocks_.slots().models[source.model].provides[source.index], index),
                    name.unit,
                    model.id,
                    name.meaning,
                    {},
                    {}};
        }
        const contract::Setting& setting = model.settings[source.index];
        const contract::Axis axis = contract::axis_of(setting.varies_by);
        return {TracedFigure::Kind::setting,
                model.id + "." + setting.name,
                place_name(axis, index),
                number(blocks_.slots().of_settings[source.model][source.index], index),
                setting.unit,
                model.id,
                setting.meaning,
                places_of(source, index),
                {}};
    }

    std::vector<base::Place> places_of(const engine::Source& source, std::size_t index) const {
        const contract::ValueStep& value =
            blocks_.filler().value_in(columns_, row_, 0, source.model, source.index, index);
        return value.place.line == 0 ? std::vector<base::Place>{} : std::vector{value.place};
    }

    // What decides which of a setting's values counts: a need that it is stepped over, a choice that it is keyed by.
    std::vector<std::size_t> deciders_of(const engine::Source& source, std::size_t index) {
        const contract::Model& model = graph().models[source.model];
        const contract::Setting& setting = model.settings[source.index];
        std::vector<std::size_t> result;
        const auto add = [&](const ModelInput& input, contract::Axis axis) {
            const std::size_t at = axis == contract::Axis::order ? 0 : index;
            result.push_back(figure_of(source_of(source.model, {input.is_setting, input.at, at}), at));
        };
        if (setting.stepped_over) add({false, *setting.stepped_over, 0}, model.needs[*setting.stepped_over].axis);
        if (setting.keyed_by)
            add({true, *setting.keyed_by, 0}, contract::axis_of(model.settings[*setting.keyed_by].varies_by));
        return result;
    }

    const engine::Blocks& blocks_;
    const engine::Row& row_;
    engine::Columns columns_;
    Movers movers_;
    Trail trail_{};
    std::map<std::tuple<engine::Source::Kind, std::size_t, std::size_t, std::size_t>, std::size_t> seen_;
};

}  // namespace

const char* to_text(TracedFigure::Kind kind) {
    static constexpr std::array<const char*, 4> names = {"amount", "provided", "fact", "setting"};
    return names.at(static_cast<std::size_t>(kind));
}

std::vector<Trail> explain(const engine::Engine& engine, const engine::Row& row, const std::string& line) {
    return TrailWalk(engine, row).of_line(line);
}

std::vector<TouchedNumber> touched_numbers(const engine::Engine& engine, const engine::Row& row) {
    std::set<std::string> lines;
    for (const contract::Model& model : engine.graph().models)
        for (const contract::Line& line : model.lines) lines.insert(line.name);
    TrailWalk walk(engine, row);
    std::map<std::string, TouchedNumber> result;
    for (const std::string& line : lines)
        for (const Trail& trail : walk.of_line(line))
            for (const TracedFigure& figure : trail.figures) {
                for (const base::Place& place : figure.places) result[base::place_text(place)] = {place, ""};
                if (figure.kind == TracedFigure::Kind::setting && figure.places.empty())
                    result[figure.name] = {{}, figure.name};
            }
    std::vector<TouchedNumber> numbers;
    for (auto& [name, number] : result) numbers.push_back(std::move(number));
    return numbers;
}

}  // namespace flutebook::explain
