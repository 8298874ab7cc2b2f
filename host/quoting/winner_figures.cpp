// If a model refuses a changed row or fails on it, nothing is learnt from it: the unchanged row was costed, and its
// quote is valid.
#include "host/quoting/winner_figures.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <tuple>
#include <utility>

#include "host/engine/costing/blocks.hpp"
#include "host/engine/facts.hpp"
#include "host/quoting/movable_settings.hpp"
#include "host/quoting/moved_rows.hpp"

namespace flutebook::quoting {

namespace {

using engine::Columns;
using engine::MovedSetting;
using engine::Row;
using engine::Slot;

constexpr double minutes_an_hour = 60;

// A line of a model.
struct LineName {
    std::size_t model, line;
    friend auto operator<=>(const LineName&, const LineName&) = default;
};

// A name that a model needs or provides, at its place there.
struct NamedSlot {
    std::size_t model, name;
    Slot slot;
};

// What is the same for every row of an engine.
class Readings {
public:
    explicit Readings(const engine::Engine& engine)
        : graph_(engine.graph()),
          blocks_(engine.blocks()),
          movable_(movable_settings(engine)),
          reached_(reached_models(graph_)) {
        for (std::size_t m = 0; m < graph_.models.size(); ++m) {
            const contract::Model& model = graph_.models[m];
            const engine::ModelSlots& slots = blocks_.slots().models[m];
            for (std::size_t n = 0; n < model.needs.size() && !setup_; ++n)
                if (model.needs[n].name == setup_name && model.needs[n].unit == "min") setup_ = slots.needs[n];
            for (std::size_t p = 0; p < model.provides.size(); ++p) {
                const contract::Name& name = model.provides[p];
                if (!run_ && name.name == "run.hours" && name.unit == "h") run_ = slots.provides[p];
                if (name.axis == contract::Axis::order && name.unit == "money" && name.name.ends_with(invoiced_ending))
                    invoiced_.push_back({m, p, slots.provides[p]});
            }
        }
    }

    [[nodiscard]] const engine::Graph& graph() const { return graph_; }
    [[nodiscard]] const std::vector<MovableSetting>& movable() const { return movable_; }
    [[nodiscard]] bool is_reached(std::size_t model, std::size_t from) const { return reached_[from][model]; }

    // Whether the line charges something at any step or ply; an amount that is too large to be kept is one.
    [[nodiscard]] bool charges(const Columns& columns, const LineName& line, std::size_t r) const {
        const engine::ModelSlots& slots = blocks_.slots().models[line.model];
        for (std::size_t i = 0; i < columns.extent(slots.quantities[line.line]); ++i) {
            const auto amount = Money::of(columns.column(slots.quantities[line.line], i)[r],
                                          columns.column(slots.rates[line.line], i)[r]);
            if (!amount || *amount != Money()) return true;
        }
        return false;
    }

    [[nodiscard]] std::vector<double> machine_hours(const Columns& columns, const Row& row, std::size_t r) const {
        std::vector<double> result;
        for (std::size_t k = 0; run_ && k + 1 < row.steps(); ++k)
            result.push_back(setup_hours(columns, row, r, k) + columns.column(*run_, k)[r]);
        return result;
    }

    // What a model says is invoiced apart: a name of the whole order, in money, that ends so.
    [[nodiscard]] std::vector<answers::NotInPrice> invoiced(const Columns& columns, std::size_t r) const {
        std::vector<answers::NotInPrice> result;
        for (const NamedSlot& named : invoiced_) {
            const auto amount = Money::of(columns.column(named.slot, 0)[r], 1);
            if (!amount || *amount == Money()) continue;
            const contract::Name& name = graph_.models[named.model].provides[named.name];
            answers::NotInPrice item;
            item.plugin = graph_.models[named.model].id;
            item.line = name.name.substr(0, name.name.size() - invoiced_ending.size());
            item.title = name.meaning;
            item.amount = amount;
            result.push_back(std::move(item));
        }
        return result;
    }

private:
    static constexpr std::string_view setup_name = "step.setup_time", invoiced_ending = ".invoiced";

    // As the models take it, which may be a preferred model's; else the plant's own.
    [[nodiscard]] double setup_hours(const Columns& columns, const Row& row, std::size_t r, std::size_t step) const {
        if (setup_) return columns.column(*setup_, step)[r] / minutes_an_hour;
        double minutes = 0;
        engine::facts()[engine::fact_index(std::string(setup_name))].fill({&row, 1}, step, &minutes);
        return minutes / minutes_an_hour;
    }

    const engine::Graph& graph_;
    const engine::Blocks& blocks_;
    std::vector<MovableSetting> movable_;
    std::vector<std::vector<bool>> reached_;
    std::optional<Slot> run_, setup_;  // of the first model that provides the one, that needs the other
    std::vector<NamedSlot> invoiced_;
};

// What one winner's moves start. Its rows are evaluated with those of others.
class MissingFinder {
public:
    MissingFinder(const Readings& readings, const Winner& winner) : readings_(readings), row_(winner.row) {
        std::vector<LineName> charged;
        charged.reserve(winner.costing->lines.size());
        for (const engine::LineAmount& amount : winner.costing->lines) charged.push_back({amount.model, amount.line});
        std::sort(charged.begin(), charged.end());
        const auto& models = readings.graph().models;
        for (std::size_t m = 0; m < models.size(); ++m) {
            if (!is_asked_about(models[m].id)) continue;
            for (std::size_t l = 0; l < models[m].lines.size(); ++l)
                if (!std::binary_search(charged.begin(), charged.end(), LineName{m, l})) silent_.push_back({m, l});
        }
        for (const MovableSetting& setting : readings.movable())
            if (reaches_silence(setting.model) && !is_given(setting)) add_moves(setting);
    }

    // The row as it is, then with each move.
    void add_rows(std::vector<MovedRow>& rows) const {
        rows.push_back({row_, std::nullopt});
        for (const MovedSetting& move : moves_) rows.push_back({row_, move});
    }

    // What row `i` of those that were added came to.
    void read(const Columns& columns, std::size_t r, std::size_t i) {
        if (i == 0) {
            result_.machine_hours = readings_.machine_hours(columns, row_, r);
            result_.not_in_price = readings_.invoiced(columns, r);
            return;
        }
        for (const LineName& line : silent_)
            if (readings_.is_reached(line.model, moves_[i - 1].model) && readings_.charges(columns, line, r))
                starts_.push_back({line, i - 1});
    }

    // Leaves the first move of each setting that starts a line. Adds a row without colours for each, in their order.
    void add_unprinted(std::vector<MovedRow>& rows) {
        const auto setting = [&](const Start& start) {
            const MovedSetting& move = moves_[start.move];
            return std::tuple(start.line, move.model, move.setting);
        };
        std::sort(starts_.begin(), starts_.end(), [](const Start& left, const Start& right) {
            return std::pair(left.line, left.move) < std::pair(right.line, right.move);
        });
        starts_.erase(
            std::unique(starts_.begin(), starts_.end(),
                        [&](const Start& left, const Start& right) { return setting(left) == setting(right); }),
            starts_.end());
        if (row_.order->request->colours <= 0) return;
        Row unprinted = row_;
        unprinted.printing = engine::Printing::none;
        for (const Start& start : starts_) rows.push_back({unprinted, moves_[start.move]});
    }

    // What row `i` of those without colours came to.
    void read_unprinted(const Columns& columns, std::size_t r, std::size_t i) {
        starts_[i].is_by_colours = !readings_.charges(columns, starts_[i].line, r);
    }

    // In the order of the lines, each with the settings that start it.
    [[nodiscard]] WinnerFigures figures() {
        const auto& models = readings_.graph().models;
        for (const Start& start : starts_) {
            const MovedSetting& move = moves_[start.move];
            const contract::Model& model = models[start.line.model];
            const contract::Setting& setting = models[move.model].settings[move.setting];
            answers::NotInPrice& item = of_line(model.id, model.lines[start.line.line].name);
            item.title = model.lines[start.line.line].title;
            item.setting = move.model == start.line.model ? setting.name : models[move.model].id + "." + setting.name;
            item.meaning = setting.meaning;
            item.colours = start.is_by_colours ? row_.order->request->colours : 0;
        }
        return std::move(result_);
    }

private:
    // A silent line, and which of moves_ starts it.
    struct Start {
        LineName line;
        std::size_t move;
        bool is_by_colours = false;  // starts nothing where the request asks for no colours
    };

    // Models that the plant calls optional are asked about where the request mentions them.
    [[nodiscard]] bool is_asked_about(const std::string& id) const {
        const auto& optional = row_.order->plant->optional_models;
        return std::none_of(optional.begin(), optional.end(),
                            [&](const plant::OptionalModel& named) { return named.id == id; }) ||
               row_.order->request->find_extras(id) != nullptr;
    }

    [[nodiscard]] bool is_given(const MovableSetting& setting) const {
        const contract::Model& declared = readings_.graph().models[setting.model];
        const plant::ModelSettings* extras = row_.order->request->find_extras(declared.id);
        return extras != nullptr && extras->find(declared.settings[setting.setting].name) != nullptr;
    }

    [[nodiscard]] bool reaches_silence(std::size_t model) const {
        return std::any_of(silent_.begin(), silent_.end(),
                           [&](const LineName& line) { return readings_.is_reached(line.model, model); });
    }

    // Rising.
    void add_moves(const MovableSetting& setting) {
        const contract::SteppedValue& here = row_.order->settings.requested[setting.request_index];
        const double quantity = row_.order->quantity;
        const std::size_t first = moves_.size();
        const auto add = [&](double value) {
            if (here.is_empty() || value != here.value()) moves_.push_back({setting.model, setting.setting, value});
        };
        for (const double value : setting.values) add(value);
        const bool is_known = std::find(setting.values.begin(), setting.values.end(), quantity) != setting.values.end();
        const auto& declared = readings_.graph().models[setting.model].settings[setting.setting];
        if (!is_known && declared.range.holds(quantity)) add(quantity);
        std::sort(moves_.begin() + static_cast<std::ptrdiff_t>(first), moves_.end(),
                  [](const MovedSetting& left, const MovedSetting& right) { return left.value < right.value; });
    }

    // The entry of a line that is invoiced apart and has no setting yet, else a new one.
    answers::NotInPrice& of_line(const std::string& plugin, const std::string& line) {
        for (answers::NotInPrice& item : result_.not_in_price)
            if (item.plugin == plugin && item.line == line && !item.setting) return item;
        answers::NotInPrice item;
        item.plugin = plugin;
        item.line = line;
        return result_.not_in_price.emplace_back(std::move(item));
    }

    const Readings& readings_;
    Row row_;
    std::vector<LineName> silent_;
    std::vector<MovedSetting> moves_;
    std::vector<Start> starts_;
    WinnerFigures result_;
};

// Rows of many finders, one finder's behind another's.
class SharedRows {
public:
    // Those that `finder` adds.
    void take(MissingFinder& finder, const auto& add) {
        const std::size_t first = rows_.size();
        add(finder, rows_);
        for (std::size_t i = first; i < rows_.size(); ++i) owners_.push_back({&finder, i - first});
    }

    // Calls read(finder, columns, r, i) with the row's number among those of its finder.
    void evaluate(const engine::Blocks& blocks, const auto& read) const {
        read_moved_rows(blocks, rows_, [&](const Columns& columns, std::size_t r, std::size_t i) {
            read(*owners_[i].finder, columns, r, owners_[i].index);
        });
    }

private:
    struct Owner {
        MissingFinder* finder;
        std::size_t index;
    };
    std::vector<MovedRow> rows_;
    std::vector<Owner> owners_;
};

}  // namespace

std::vector<WinnerFigures> winner_figures(const engine::Engine& engine, std::span<const Winner> winners) {
    const Readings readings(engine);
    std::vector<MissingFinder> finders;
    finders.reserve(winners.size());
    for (const Winner& winner : winners) finders.emplace_back(readings, winner);

    SharedRows moved, unprinted;
    for (MissingFinder& finder : finders)
        moved.take(finder, [](const MissingFinder& from, std::vector<MovedRow>& rows) { from.add_rows(rows); });
    moved.evaluate(engine.blocks(), [](MissingFinder& finder, const Columns& columns, std::size_t r, std::size_t i) {
        finder.read(columns, r, i);
    });
    for (MissingFinder& finder : finders)
        unprinted.take(finder, [](MissingFinder& from, std::vector<MovedRow>& rows) { from.add_unprinted(rows); });
    unprinted.evaluate(engine.blocks(), [](MissingFinder& finder, const Columns& columns, std::size_t r,
                                           std::size_t i) { finder.read_unprinted(columns, r, i); });
    std::vector<WinnerFigures> result;
    for (MissingFinder& finder : finders) result.push_back(finder.figures());
    return result;
}

}  // namespace flutebook::quoting
