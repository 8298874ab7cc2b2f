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
#include "host/explain/figure_index.hpp"
#include "host/explain/movers.hpp"
#include "host/plant/machine_list.hpp"

namespace flutebook::explain {
namespace {

using Kind = FigureAt::Kind;

// Walks one row down from a figure.
class TrailWalk {
public:
    TrailWalk(const engine::Engine& engine, const engine::Row& row, const std::vector<Formula>& formulas)
        : blocks_(engine.blocks()),
          row_(row),
          formulas_(formulas),
          index_(blocks_.graph(), {row.plies(), row.steps()}, formulas),
          columns_(blocks_.columns_of(row)),
          movers_(blocks_, row) {}

    std::vector<Trail> of(const std::string& name) {
        std::vector<Trail> result;
        for (const FigureAt& figure : index_.named(name)) {
            if (is_nothing(figure)) continue;
            trail_ = {};
            seen_.clear();
            static_cast<void>(number_of(figure));
            result.push_back(std::move(trail_));
        }
        return result;
    }

private:
    const engine::Graph& graph() const { return blocks_.graph(); }
    const engine::ModelSlots& slots(const FigureAt& figure) const { return blocks_.slots().models[figure.model]; }
    double number(engine::Slot slot, std::size_t index) const { return *columns_.column(slot, index); }

    // What no model takes has no column.
    double value_of_fact(const FigureAt& figure) const {
        const engine::Slot slot = blocks_.slots().of_facts[figure.index];
        if (slot != engine::Slots::none) return number(slot, figure.at);
        double value = 0;
        engine::facts()[figure.index].fill({&row_, 1}, figure.at, &value);
        return value;
    }

    Money amount(const FigureAt& line) const {
        const double quantity = number(slots(line).quantities[line.index], line.at);
        return Money::of(quantity, number(slots(line).rates[line.index], line.at)).value_or(Money{});
    }

    bool is_nothing(const FigureAt& figure) const {
        if (figure.kind == Kind::line) return amount(figure) == Money{};
        return figure.kind == Kind::loss && number(slots(figure).losses[figure.index], figure.at) == 0;
    }

    std::string place_name(contract::Axis axis, std::size_t index) const {
        const plant::Plant& plant = *row_.order->plant;
        if (axis == contract::Axis::order) return {};
        if (axis == contract::Axis::ply)
            return fmt::format("ply {} {}", index + 1, plant.paper(row_.order->layout->board.plies[index].paper).code);
        return fmt::format("step {} {}", index, plant::machine_code(plant, engine::machine_index(row_, index)));
    }

    // Its number in the trail, where it is put with all that stands behind it.
    std::size_t number_of(const FigureAt& figure) {
        if (const auto found = seen_.find(figure); found != seen_.end()) return found->second;
        const std::size_t at = trail_.figures.size();
        seen_[figure] = at;
        trail_.figures.emplace_back();
        TracedFigure traced = describe(figure);
        for (const FigureAt& input : inputs_of(figure)) {
            const std::size_t behind = number_of(input);
            if (std::find(traced.inputs.begin(), traced.inputs.end(), behind) == traced.inputs.end())
                traced.inputs.push_back(behind);
        }
        trail_.figures[at] = std::move(traced);
        return at;
    }

    std::vector<FigureAt> inputs_of(const FigureAt& figure) {
        switch (figure.kind) {
            case Kind::line:
                return moved(figure.model, {{slots(figure).quantities[figure.index], figure.at},
                                            {slots(figure).rates[figure.index], figure.at}});
            case Kind::loss:
                return moved(figure.model, {{slots(figure).losses[figure.index], figure.at}});
            case Kind::provided:
                return moved(figure.model, {{slots(figure).provides[figure.index], figure.at}});
            case Kind::setting:
                return deciders_of(figure);
            case Kind::formula:
                return named(formulas_[figure.index].inputs);
            case Kind::fact:
                break;
        }
        return {};
    }

    std::vector<FigureAt> moved(std::size_t model, const std::vector<ModelResult>& results) {
        std::vector<FigureAt> inputs;
        for (const ModelInput& input : movers_.of(model, results))
            inputs.push_back(input.is_setting ? index_.setting(model, input.at, input.index)
                                              : index_.need(model, input.at, input.index));
        return inputs;
    }

    std::vector<FigureAt> named(const std::vector<Formula::Input>& inputs) const {
        std::vector<FigureAt> result;
        for (const Formula::Input& input : inputs)
            for (const FigureAt& figure : index_.named(input.name, input.step))
                if (!is_nothing(figure)) result.push_back(figure);
        return result;
    }

    // What decides which of a setting's values counts: a need that it is stepped over, a choice that it is keyed by.
    std::vector<FigureAt> deciders_of(const FigureAt& figure) const {
        const contract::Model& model = graph().models[figure.model];
        const contract::Setting& setting = model.settings[figure.index];
        std::vector<FigureAt> result;
        const auto at = [&](contract::Axis axis) { return axis == contract::Axis::order ? 0 : figure.at; };
        if (setting.stepped_over)
            result.push_back(
                index_.need(figure.model, *setting.stepped_over, at(model.needs[*setting.stepped_over].axis)));
        if (setting.keyed_by)
            result.push_back(index_.setting(figure.model, *setting.keyed_by,
                                            at(contract::axis_of(model.settings[*setting.keyed_by].varies_by))));
        return result;
    }

    TracedFigure describe(const FigureAt& figure) const {
        switch (figure.kind) {
            case Kind::line:
                return describe_line(figure);
            case Kind::formula:
                return describe_formula(formulas_[figure.index]);
            case Kind::loss:
                return describe_loss(figure);
            case Kind::provided:
                return describe_provided(figure);
            case Kind::fact:
                return describe_fact(figure);
            case Kind::setting:
                break;
        }
        return describe_setting(figure);
    }

    TracedFigure describe_line(const FigureAt& figure) const {
        const contract::Model& model = graph().models[figure.model];
        const contract::Line& line = model.lines[figure.index];
        TracedFigure result{TracedFigure::Kind::amount,
                            line.name,
                            place_name(line.axis, figure.at),
                            amount(figure).to_double(),
                            "money",
                            model.id,
                            line.title,
                            {},
                            {}};
        result.charge = Charge{number(slots(figure).quantities[figure.index], figure.at),
                               number(slots(figure).rates[figure.index], figure.at), line.unit};
        return result;
    }

    TracedFigure describe_formula(const Formula& formula) const {
        const std::string where = formula.step ? place_name(contract::Axis::step, *formula.step) : "";
        return {
            TracedFigure::Kind::formula, formula.name, where, formula.value, formula.unit, "", formula.says, {}, {}};
    }

    TracedFigure describe_loss(const FigureAt& figure) const {
        const contract::Model& model = graph().models[figure.model];
        const contract::Loss& loss = model.losses[figure.index];
        return {TracedFigure::Kind::provided,
                loss.cause,
                place_name(contract::Axis::step, figure.at),
                number(slots(figure).losses[figure.index], figure.at),
                "kg",
                model.id,
                loss.title,
                {},
                {}};
    }

    TracedFigure describe_provided(const FigureAt& figure) const {
        const contract::Model& model = graph().models[figure.model];
        const contract::Name& name = model.provides[figure.index];
        return {TracedFigure::Kind::provided,
                name.name,
                place_name(name.axis, figure.at),
                number(slots(figure).provides[figure.index], figure.at),
                name.unit,
                model.id,
                name.meaning,
                {},
                {}};
    }

    TracedFigure describe_fact(const FigureAt& figure) const {
        const engine::Fact& fact = engine::facts()[figure.index];
        engine::FactOrigin from = engine::origin(fact, row_, figure.at);
        TracedFigure result{TracedFigure::Kind::fact, fact.name.name,         place_name(fact.name.axis, figure.at),
                            value_of_fact(figure),    fact.name.unit,         "",
                            std::move(from.how),      std::move(from.places), {}};
        result.choice = std::move(from.choice);
        return result;
    }

    TracedFigure describe_setting(const FigureAt& figure) const {
        const contract::Model& model = graph().models[figure.model];
        const contract::Setting& setting = model.settings[figure.index];
        TracedFigure result{TracedFigure::Kind::setting,
                            model.id + "." + setting.name,
                            place_name(contract::axis_of(setting.varies_by), figure.at),
                            number(blocks_.slots().of_settings[figure.model][figure.index], figure.at),
                            setting.unit,
                            model.id,
                            setting.meaning,
                            places_of(figure),
                            {}};
        if (!setting.choices.empty()) result.choice = setting.choices.at(static_cast<std::size_t>(result.value));
        return result;
    }

    std::vector<base::Place> places_of(const FigureAt& setting) const {
        const contract::ValueStep& value =
            blocks_.filler().value_in(columns_, row_, 0, setting.model, setting.index, setting.at);
        return value.place.line == 0 ? std::vector<base::Place>{} : std::vector{value.place};
    }

    const engine::Blocks& blocks_;
    const engine::Row& row_;
    const std::vector<Formula>& formulas_;
    FigureIndex index_;
    engine::Columns columns_;
    Movers movers_;
    Trail trail_{};
    std::map<FigureAt, std::size_t> seen_;
};

}  // namespace

const char* to_text(TracedFigure::Kind kind) {
    static constexpr std::array<const char*, 5> names = {"amount", "provided", "fact", "setting", "formula"};
    return names.at(static_cast<std::size_t>(kind));
}

std::vector<Trail> explain(const engine::Engine& engine, const engine::Row& row, const std::string& figure,
                           const std::vector<Formula>& formulas) {
    return TrailWalk(engine, row, formulas).of(figure);
}

std::vector<std::string> figure_names(const engine::Engine& engine) {
    std::vector<std::string> result;
    const engine::Graph& graph = engine.graph();
    for (const contract::Model& model : graph.models) {
        for (const contract::Line& line : model.lines) result.push_back(line.name);
        for (const contract::Name& name : model.provides) result.push_back(name.name);
        for (const contract::Setting& setting : model.settings) result.push_back(model.id + "." + setting.name);
    }
    for (const contract::Loss& loss : graph.models[graph.shedder].losses) result.push_back(loss.cause);
    for (const engine::Fact& fact : engine::facts())
        if (fact.fill != nullptr) result.push_back(fact.name.name);
    return result;
}

std::vector<TouchedNumber> touched_numbers(const engine::Engine& engine, const engine::Row& row) {
    std::set<std::string> lines;
    for (const contract::Model& model : engine.graph().models)
        for (const contract::Line& line : model.lines) lines.insert(line.name);
    const std::vector<Formula> none;
    TrailWalk walk(engine, row, none);
    std::map<std::string, TouchedNumber> result;
    for (const std::string& line : lines)
        for (const Trail& trail : walk.of(line))
            for (const TracedFigure& figure : trail.figures) {
                for (const base::Place& place : figure.places) result[base::place_text(place)].place = place;
                if (figure.kind == TracedFigure::Kind::setting && figure.places.empty())
                    result[figure.name].default_of = figure.name;
            }
    std::vector<TouchedNumber> numbers;
    for (auto& [name, number] : result) numbers.push_back(std::move(number));
    return numbers;
}

}  // namespace flutebook::explain
