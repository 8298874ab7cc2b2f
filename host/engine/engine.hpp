// The engine: loads plugins and costs orders.
//
// Started once from a plant; constant and safe to call from any thread afterwards. Every row is costed through all
// models in blocks; what comes out does not depend on blocks or threads, to the bit. Each row is checked: names in
// range, every provide written, mass balanced to 1e-9 of what came in.
#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "host/base/diagnostics.hpp"
#include "host/contract/evaluator.hpp"
#include "host/contract/settings.hpp"
#include "host/contract/trust.hpp"
#include "host/engine/graph/graph.hpp"
#include "host/engine/row.hpp"
#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::engine {

/// What one row came to.
struct Outcome {
    enum class State { costed, refused };
    State state = State::costed;
    std::size_t model = 0, reason = 0;  // of a refused row: the model and its declared reason
    Money cost;                         // of a costed row: the sum of its rounded lines
    Money before_late;                  // the same without the lines of late models
};

/// One line at one place of its axis. Those that come to nothing are left out.
struct LineAmount {
    std::size_t model, line, step;
    std::optional<std::size_t> ply;
    double quantity, rate;
    Money amount;
};

/// What the run was allowed to lose: the plant's own allowances, or what a preferred model made of them.
struct Allowances {
    double order_change_m = 0, roll_loss = 0;
    std::vector<double> run_waste, setup_sheets;  // by step 0 .. K+1
};

/// A run that was measured, to be costed instead of the one that the models would lay out. By step 0 .. K+1.
struct MeasuredRun {
    std::vector<double> fed, good;
    double web_length_m, web_area_m2;
    std::vector<double> issued_kg;  // by ply
    double adhesive_kg;
    std::vector<std::vector<double>> losses;  // kg, by cause of the shedding model, then by step
};

/// A row costed with all that stands behind its total.
struct Costing {
    std::vector<LineAmount> lines;            // in order of step, then graph, then ply
    std::vector<std::vector<double>> losses;  // kg, by cause of the shedding model, then by step 0 .. K+1
    std::vector<double> fed, good;            // by step 0 .. K+1
    std::vector<double> issued_kg;            // by ply
    double adhesive_kg = 0, web_length_m = 0, web_area_m2 = 0;
    Allowances allowances;
    Money cost;
};

/// What a costing comes to by class.
[[nodiscard]] ClassCosts costs_by_class(const Graph& graph, const Costing& costing);

class Blocks;

class Engine {
public:
    /// Loads the models that the plant lists, from `plugins/` in its folder, else from `installed`, and joins them.
    /// Files that the plant has pinned to other bytes are refused, and those that `trust` refuses; without it, what
    /// loads is believed. Models that the plant wants isolated are opened `elsewhere`, and so are those that `trust`
    /// does not know as installed, unless the plant wants them here: no code of theirs comes into this process. Throws
    /// InputError (plant) for unfit settings, ModelError for unfit plugins.
    [[nodiscard]] static Engine start(const plant::Plant& plant, const std::string& installed,
                                      contract::Trust* trust = nullptr, contract::IsolatedLoader* elsewhere = nullptr);

    /// The same models with the settings of another plant, which lists them in the same order: nothing is loaded.
    /// Throws InputError (plant) for unfit settings.
    [[nodiscard]] Engine with_settings_of(const plant::Plant& plant) const;
    /// What is wrong with the settings of a plant whose files have faults: to be told with them. Throws ModelError
    /// where the models cannot be loaded or joined.
    [[nodiscard]] static base::Diagnostics setting_faults(const plant::PlantReading& reading,
                                                          const std::string& installed, contract::Trust* trust,
                                                          contract::IsolatedLoader* elsewhere);

    ~Engine();
    Engine(Engine&&) noexcept;
    Engine& operator=(Engine&&) noexcept;

    [[nodiscard]] const Graph& graph() const;
    [[nodiscard]] const contract::Settings& settings() const;
    /// Of the plant's settings, in the order of the models.
    [[nodiscard]] const std::vector<contract::UnusualValue>& unusual_settings() const { return unusual_; }

    /// An order at a quantity, of one piece of a set where `piece` says so. Throws InputError (request) where its
    /// extras do not fit the models, or a setting has no value for it.
    [[nodiscard]] Order order(const plant::Plant& plant, const orders::Request& request, const geometry::Layout& layout,
                              double quantity, const PieceOfSet& piece = {}) const;

    /// What an order of the request takes of all settings. Throws InputError (request) as order() does.
    [[nodiscard]] contract::OrderSettings settings_of(const plant::Plant& plant, const orders::Request& request) const;

    /// What is wrong with the extras of a request, for its reader to tell with its other faults. The engine and the
    /// plant must outlive it.
    [[nodiscard]] orders::ExtrasCheck extras_check(const plant::Plant& plant) const;

    /// Costs every row, on up to `threads` threads. Throws ModelError where a model is at fault in any row, naming
    /// the first.
    [[nodiscard]] std::vector<Outcome> cost(std::span<const Row> rows, unsigned threads) const;

    /// Costs one row in full; nothing where a model refuses it. The total is that of cost(), to the bit. Throws
    /// ModelError.
    [[nodiscard]] std::optional<Costing> cost_in_full(const Row& row) const;
    /// Of each row, in their order, which are costed together.
    [[nodiscard]] std::vector<std::optional<Costing>> cost_in_full(std::span<const Row> rows) const;

    /// The same with a run that was measured: the host stands in for the model that lays out the run, all others work
    /// unchanged. What was measured need not balance, and is not held to. Throws ModelError also where the model that
    /// lays out the run provides more than a run has.
    [[nodiscard]] std::optional<Costing> cost_in_full(const Row& row, const MeasuredRun& run) const;

    /// The blocks themselves, for code that traces a figure to its origin.
    [[nodiscard]] const Blocks& blocks() const;

private:
    Engine(Graph graph, const plant::Plant& plant);
    std::unique_ptr<const Blocks> blocks_;
    contract::SettingTakers takers_;
    std::vector<contract::UnusualValue> unusual_;
};

}  // namespace flutebook::engine
