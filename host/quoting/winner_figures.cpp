// A move that a model refuses, or is at fault at, tells nothing: the row itself was costed, and its quote stands.
#include "host/quoting/winner_figures.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <utility>

#include "host/engine/costing/blocks.hpp"
#include "host/engine/facts.hpp"

namespace flutebook::quoting {

namespace {

using engine::Columns;
using engine::MovedSetting;
using engine::Order;
using engine::Row;
using engine::Slot;

constexpr double minutes_an_hour = 60;

// A line of a model.
struct LineName {
    std::size_t model, line;
    friend auto operator<=>(const LineName&, const LineName&) = default;
};

// Columns in which rows of one shape are evaluated; what a row came to is read before the next block runs.
class MovedRows {
public:
    MovedRows(engine::Workbench& bench, const Row& row)
        : blocks_(bench.blocks()), columns_(bench.columns({row.plies(), row.steps()})) {}

    // Evaluates `row` as many times as there are moves, each with its own. Calls `read(columns, r, i)` for each move i
    // that no model refuses, whose row stands at r of the columns.
    template <typename Read>
    void each(const Row& row, const std::vector<std::optional<MovedSetting>>& moves, const Read& read) {
        for (std::size_t first = 0; first < moves.size(); first += engine::block_rows) {
            const std::size_t count = std::min(engine::block_rows, moves.size() - first);
            const auto block = std::span(moves).subspan(first, count);
            if (runs(row, block)) {
                for (std::size_t r = 0; r < count; ++r) read(columns_, r, first + r);
                continue;
            }
            for (std::size_t r = 0; r < count; ++r)
                if (runs(row, block.subspan(r, 1))) read(columns_, std::size_t{0}, first + r);
        }
    }

private:
    // Whether every row came through all models.
    bool runs(const Row& row, engine::Moves moves) {
        const std::vector<Row> rows(moves.size(), row);
        std::vector<engine::Outcome> outcomes(moves.size());
        if (blocks_.run_moved(columns_, rows, moves, outcomes)) return false;
        return std::all_of(outcomes.begin(), outcomes.end(), [](const engine::Outcome& outcome) {
            return outcome.state == engine::Outcome::State::costed;
        });
    }

    const engine::Blocks& blocks_;
    Columns& columns_;
};

// Whether the line charges an amount at this step or ply; one that is too large to be kept is an amount.
bool charges_at(const engine::Blocks& blocks, const Columns& columns, const LineName& line, std::size_t r,
                std::size_t index) {
    const engine::ModelSlots& slots = blocks.slots().models[line.model];
    const auto amount = Money::of(columns.column(slots.quantities[line.line], index)[r],
                                  columns.column(slots.rates[line.line], index)[r]);
    return !amount || *amount != Money();
}

bool charges(const engine::Blocks& blocks, const Columns& columns, const LineName& line, std::size_t r) {
    const Slot slot = blocks.slots().models[line.model].quantities[line.line];
    for (std::size_t i = 0; i < columns.extent(slot); ++i)
        if (charges_at(blocks, columns, line, r, i)) return true;
    return false;
}

class MissingFinder {
public:
    MissingFinder(const engine::Engine& engine, const Row& row, const engine::Costing& costing,
                  engine::Workbench& bench)
        : graph_(engine.graph()),
          settings_(engine.settings()),
          blocks_(engine.blocks()),
          row_(row),
          reader_(bench, row) {
        std::set<LineName> charged;
        for (const engine::LineAmount& amount : costing.lines) charged.insert({amount.model, amount.line});
        for (std::size_t m = 0; m < graph_.models.size(); ++m)
            for (std::size_t l = 0; l < graph_.models[m].lines.size(); ++l)
                if (charged.count({m, l}) == 0 && is_asked_about(m)) silent_.push_back({m, l});
    }

    WinnerFigures find() {
        find_moves();
        std::vector<std::optional<MovedSetting>> rows = {std::nullopt};
        rows.insert(rows.end(), moves_.begin(), moves_.end());
        WinnerFigures result;
        reader_.each(row_, rows, [&](const Columns& columns, std::size_t r, std::size_t i) {
            if (i == 0) {
                result.machine_hours = machine_hours(columns, r);
                add_invoiced(columns, r, result.not_in_price);
                return;
            }
            for (const LineName& line : silent_)
                if (charges(blocks_, columns, line, r)) starts_.insert({line, i - 1});
        });
        add_started(result.not_in_price);
        return result;
    }

private:
    // Models that the plant calls optional are asked about where the request mentions them.
    [[nodiscard]] bool is_asked_about(std::size_t model) const {
        const std::string& id = graph_.models[model].id;
        const auto& optional = row_.order->plant->optional_models;
        return row_.order->request->find_extras(id) != nullptr ||
               std::none_of(optional.begin(), optional.end(),
                            [&](const plant::OptionalModel& named) { return named.id == id; });
    }

    [[nodiscard]] bool is_given(std::size_t model, std::size_t setting) const {
        const contract::Model& declared = graph_.models[model];
        const plant::ModelSettings* extras = row_.order->request->find_extras(declared.id);
        return extras != nullptr && extras->find(declared.settings[setting].name) != nullptr;
    }

    [[nodiscard]] bool can_move(std::size_t model, std::size_t setting) const {
        const contract::Setting& declared = graph_.models[model].settings[setting];
        return declared.varies_by == contract::VariesBy::request && declared.choices.empty() &&
               !graph_.settings[model][setting] && !is_given(model, setting);
    }

    // The models that a number of this one can reach, itself among them.
    [[nodiscard]] std::vector<bool> reached_from(std::size_t model) const {
        std::vector<bool> result(graph_.models.size(), false);
        result[model] = true;
        const auto is_fed = [&](const engine::Source& source) {
            return source.kind != engine::Source::Kind::fact && result[source.model];
        };
        for (std::size_t m = model + 1; m < graph_.models.size(); ++m) {
            result[m] = model < graph_.first_late && m >= graph_.first_late;
            for (const engine::Link& need : graph_.needs[m]) result[m] = result[m] || is_fed(need.source);
            for (const auto& link : graph_.settings[m]) result[m] = result[m] || (link && is_fed(link->source));
        }
        return result;
    }

    [[nodiscard]] bool reaches_silence(std::size_t model) const {
        const std::vector<bool> reached = reached_from(model);
        return std::any_of(silent_.begin(), silent_.end(), [&](const LineName& line) { return reached[line.model]; });
    }

    void find_moves() {
        if (silent_.empty()) return;
        for (std::size_t m = 0; m < graph_.models.size(); ++m) {
            const std::size_t settings = graph_.models[m].settings.size();
            bool is_worth_it = false;
            for (std::size_t s = 0; s < settings; ++s) is_worth_it = is_worth_it || can_move(m, s);
            if (!is_worth_it || !reaches_silence(m)) continue;
            for (std::size_t s = 0; s < settings; ++s)
                if (can_move(m, s)) add_moves(m, s);
        }
    }

    void add_moves(std::size_t model, std::size_t setting) {
        const contract::Range range = graph_.models[model].settings[setting].range;
        const contract::SteppedValue& here = row_.order->settings.requested[index_of({model, setting, 0})];
        std::set<double> values;
        for (const double value : {range.low, range.high, 1.0, row_.order->quantity})
            if (std::isfinite(value) && range.holds(value)) values.insert(value);
        if (!here.is_empty()) values.erase(here.value());
        for (const double value : values) moves_.push_back({model, setting, value});
    }

    [[nodiscard]] std::size_t index_of(const MovedSetting& move) const {
        return settings_[move.model][move.setting].request_index;
    }

    [[nodiscard]] std::vector<double> machine_hours(const Columns& columns, std::size_t r) const {
        for (std::size_t m = 0; m < graph_.models.size(); ++m) {
            const contract::Model& model = graph_.models[m];
            for (std::size_t p = 0; p < model.provides.size(); ++p) {
                if (model.provides[p].name != "run.hours" || model.provides[p].unit != "h") continue;
                const Slot run = blocks_.slots().models[m].provides[p];
                std::vector<double> result;
                for (std::size_t k = 0; k + 1 < row_.steps(); ++k)
                    result.push_back(setup_hours(columns, r, k) + columns.column(run, k)[r]);
                return result;
            }
        }
        return {};
    }

    // As the models take it, which may be a preferred model's; else the plant's own.
    [[nodiscard]] double setup_hours(const Columns& columns, std::size_t r, std::size_t step) const {
        static const std::string name = "step.setup_time";
        for (std::size_t m = 0; m < graph_.models.size(); ++m)
            for (std::size_t n = 0; n < graph_.models[m].needs.size(); ++n) {
                const contract::Name& need = graph_.models[m].needs[n];
                if (need.name == name && need.unit == "min")
                    return columns.column(blocks_.slots().models[m].needs[n], step)[r] / minutes_an_hour;
            }
        double minutes = 0;
        engine::facts()[engine::fact_index(name)].fill({&row_, 1}, step, &minutes);
        return minutes / minutes_an_hour;
    }

    // What a model says is invoiced apart: a name of the whole order, in money, that ends so.
    void add_invoiced(const Columns& columns, std::size_t r, std::vector<answers::NotInPrice>& found) const {
        static const std::string ending = ".invoiced";
        for (std::size_t m = 0; m < graph_.models.size(); ++m) {
            const contract::Model& model = graph_.models[m];
            for (std::size_t p = 0; p < model.provides.size(); ++p) {
                const contract::Name& name = model.provides[p];
                if (name.axis != contract::Axis::order || name.unit != "money" || !name.name.ends_with(ending))
                    continue;
                const auto amount = Money::of(columns.column(blocks_.slots().models[m].provides[p], 0)[r], 1);
                if (!amount || *amount == Money()) continue;
                answers::NotInPrice item;
                item.plugin = model.id;
                item.line = name.name.substr(0, name.name.size() - ending.size());
                item.title = name.meaning;
                item.amount = amount;
                found.push_back(std::move(item));
            }
        }
    }

    // In the order of the lines, each with the settings that start it.
    void add_started(std::vector<answers::NotInPrice>& found) {
        const std::vector<bool> by_colours = stopped_without_colours();
        std::set<std::pair<LineName, std::pair<std::size_t, std::size_t>>> told;
        std::size_t at = 0;
        for (const auto& [line, m] : starts_) {
            const bool is_of_colours = by_colours[at++];
            const MovedSetting& move = moves_[m];
            if (!told.insert({line, {move.model, move.setting}}).second) continue;
            const contract::Model& model = graph_.models[line.model];
            answers::NotInPrice& item = of_line(found, model.id, model.lines[line.line].name);
            const contract::Setting& setting = graph_.models[move.model].settings[move.setting];
            item.title = model.lines[line.line].title;
            item.setting = move.model == line.model ? setting.name : graph_.models[move.model].id + "." + setting.name;
            item.meaning = setting.meaning;
            item.colours = is_of_colours ? row_.order->request->colours : 0;
        }
    }

    // The entry of a line that is invoiced apart and has no setting yet, else a new one.
    static answers::NotInPrice& of_line(std::vector<answers::NotInPrice>& found, const std::string& plugin,
                                        const std::string& line) {
        for (answers::NotInPrice& item : found)
            if (item.plugin == plugin && item.line == line && !item.setting) return item;
        answers::NotInPrice item;
        item.plugin = plugin;
        item.line = line;
        return found.emplace_back(std::move(item));
    }

    // By entry of starts_: whether the same move starts nothing where the request asks for no colours.
    [[nodiscard]] std::vector<bool> stopped_without_colours() {
        std::vector<bool> result(starts_.size(), false);
        if (starts_.empty() || row_.order->request->colours <= 0) return result;
        orders::Request plain = *row_.order->request;
        plain.colours = 0;
        Order unprinted = *row_.order;
        unprinted.request = &plain;
        std::vector<std::optional<MovedSetting>> moves;
        std::vector<LineName> lines;
        for (const auto& [line, m] : starts_) {
            moves.emplace_back(moves_[m]);
            lines.push_back(line);
        }
        reader_.each({&unprinted, row_.candidate}, moves, [&](const Columns& columns, std::size_t r, std::size_t i) {
            result[i] = !charges(blocks_, columns, lines[i], r);
        });
        return result;
    }

    const engine::Graph& graph_;
    const contract::Settings& settings_;
    const engine::Blocks& blocks_;
    const Row& row_;
    MovedRows reader_;
    std::vector<LineName> silent_;
    std::vector<MovedSetting> moves_;
    std::set<std::pair<LineName, std::size_t>> starts_;  // a silent line, and which of moves_ starts it
};

}  // namespace

WinnerFigures winner_figures(const engine::Engine& engine, const Row& row, const engine::Costing& costing,
                             engine::Workbench& bench) {
    return MissingFinder(engine, row, costing, bench).find();
}

}  // namespace flutebook::quoting
