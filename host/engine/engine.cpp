#include "host/engine/engine.hpp"

#include <algorithm>
#include <atomic>
#include <exception>
#include <map>
#include <thread>

#include "host/base/errors.hpp"
#include "host/contract/plant_models.hpp"
#include "host/engine/costing/blocks.hpp"
#include "host/engine/costing/fill.hpp"
#include "host/engine/costing/full_costing.hpp"

namespace flutebook::engine {
namespace {

// Rows in blocks of one shape each, first pieces and others apart, in the order in which the shapes and rows first
// come. Blocks depend on the rows alone, so that a fault names the same row whatever the number of threads.
struct Blocked {
    Shape shape{};
    std::vector<std::size_t> rows;
};

std::vector<Blocked> divide(std::span<const Row> rows, std::size_t rows_of_block) {
    std::vector<Blocked> result;
    std::map<std::pair<Shape, bool>, std::size_t> open;  // the block of each shape that still has room
    for (std::size_t r = 0; r < rows.size(); ++r) {
        const Shape shape{rows[r].plies(), rows[r].steps()};
        auto [at, is_new] = open.try_emplace({shape, rows[r].order->piece.is_first()}, result.size());
        if (!is_new && result[at->second].rows.size() == rows_of_block) {
            at->second = result.size();
            is_new = true;
        }
        if (is_new) {
            result.emplace_back().shape = shape;
            result.back().rows.reserve(rows_of_block);
        }
        result[at->second].rows.push_back(r);
    }
    return result;
}

// The work of one thread: takes the next block until none is left.
class CostingThread {
public:
    CostingThread(const Blocks& blocks, std::span<const Row> rows, const std::vector<Blocked>& work,
                  std::span<Outcome> outcomes)
        : blocks_(blocks), rows_(rows), work_(work), outcomes_(outcomes) {}

    /// Keeps what is thrown: an exception that left a thread would end the program.
    void run(std::atomic<std::size_t>& next) {
        try {
            for (std::size_t at = next++; at < work_.size(); at = next++) cost(work_[at]);
        } catch (...) {
            thrown_ = std::current_exception();
            next = work_.size();
        }
    }

    /// Throws what run() kept.
    void rethrow() const {
        if (thrown_) std::rethrow_exception(thrown_);
    }

    /// The first row at fault among the blocks it took; null where none was.
    [[nodiscard]] const Fault* fault() const { return fault_ ? &*fault_ : nullptr; }

private:
    void cost(const Blocked& block) {
        std::vector<Row> rows;
        rows.reserve(block.rows.size());
        std::vector<Outcome> outcomes(block.rows.size());
        for (const std::size_t r : block.rows) rows.push_back(rows_[r]);
        // Kept to the end of the work: what this processor has near by is of use for its next block.
        auto columns = columns_.find(block.shape);
        if (columns == columns_.end()) columns = columns_.emplace(block.shape, blocks_.columns(block.shape)).first;
        const auto fault = blocks_.cost(*columns->second, rows, outcomes);
        if (fault && (!fault_ || block.rows[fault->row] < fault_->row))
            fault_ = Fault{block.rows[fault->row], fault->text};
        for (std::size_t i = 0; i < block.rows.size(); ++i) outcomes_[block.rows[i]] = outcomes[i];
    }

    const Blocks& blocks_;
    std::span<const Row> rows_;
    const std::vector<Blocked>& work_;
    std::span<Outcome> outcomes_;
    std::map<Shape, LentColumns> columns_;
    std::optional<Fault> fault_;
    std::exception_ptr thrown_;
};

}  // namespace

Engine::Engine(Graph graph, const plant::Plant& plant) {
    takers_ = setting_takers(graph);
    contract::PlantSettings settings = contract::read_settings(plant, graph.models, takers_);
    unusual_ = std::move(settings.unusual);
    blocks_ = std::make_unique<const Blocks>(std::move(graph), std::move(settings.values));
}

Engine::~Engine() = default;
Engine::Engine(Engine&&) noexcept = default;
Engine& Engine::operator=(Engine&&) noexcept = default;

Engine Engine::start(const plant::Plant& plant, const std::string& installed, contract::Trust* trust,
                     contract::IsolatedLoader* elsewhere) {
    return {join(contract::open_models(plant, installed, {trust, elsewhere}), plant.preferences), plant};
}

Engine Engine::with_settings_of(const plant::Plant& plant) const {
    return {graph(), plant};
}

base::Diagnostics Engine::setting_faults(const plant::PlantReading& reading, const std::string& installed,
                                         contract::Trust* trust, contract::IsolatedLoader* elsewhere) {
    const Graph graph =
        join(contract::open_models(reading.plant, installed, {trust, elsewhere}), reading.plant.preferences);
    return contract::setting_faults(
        reading.plant, graph.models, setting_takers(graph),
        reading.knows_all_codes ? contract::PlantCodes::all_known : contract::PlantCodes::some_unknown);
}

const Graph& Engine::graph() const {
    return blocks_->graph();
}
const contract::Settings& Engine::settings() const {
    return blocks_->settings();
}
const Blocks& Engine::blocks() const {
    return *blocks_;
}
Order Engine::order(const plant::Plant& plant, const orders::Request& request, const geometry::Layout& layout,
                    double quantity, const PieceOfSet& piece) const {
    const bool has_web = !plant.boards[request.board].is_bought();  // else no trim to share
    return {&plant,
            &request,
            &layout,
            quantity,
            settings_of(plant, request),
            piece,
            has_web ? request.trim : plant::TrimPolicy{}};
}

contract::OrderSettings Engine::settings_of(const plant::Plant& plant, const orders::Request& request) const {
    return contract::settings_of_order(settings(), takers_, graph().models, plant, request);
}

orders::ExtrasCheck Engine::extras_check(const plant::Plant& plant) const {
    return [this, &plant](const orders::Request& request) {
        return contract::extras_faults(graph().models, plant, request);
    };
}

std::vector<Outcome> Engine::cost(std::span<const Row> rows, unsigned threads) const {
    const std::vector<Blocked> work = divide(rows, blocks_->rows_of_block());
    std::vector<Outcome> outcomes(rows.size());
    const std::size_t wanted = std::clamp<std::size_t>(threads, 1, std::max<std::size_t>(work.size(), 1));
    std::atomic<std::size_t> next = 0;
    std::vector<CostingThread> workers;
    workers.reserve(wanted);
    for (std::size_t w = 0; w < wanted; ++w) workers.emplace_back(*blocks_, rows, work, outcomes);
    {
        std::vector<std::jthread> running;
        for (std::size_t w = 1; w < wanted; ++w) running.emplace_back([&, w] { workers[w].run(next); });
        workers.front().run(next);
    }
    for (const CostingThread& worker : workers) worker.rethrow();
    const Fault* first = nullptr;
    for (const CostingThread& worker : workers)
        if (worker.fault() != nullptr && (first == nullptr || worker.fault()->row < first->row)) first = worker.fault();
    if (first != nullptr) throw ModelError(first->text);
    return outcomes;
}

std::optional<Costing> Engine::cost_in_full(const Row& row) const {
    return std::move(cost_in_full(std::span(&row, 1)).front());
}

// The columns of a block in which a row was refused hold the others closed up.
std::vector<std::optional<Costing>> Engine::cost_in_full(std::span<const Row> rows) const {
    std::vector<std::optional<Costing>> result(rows.size());
    for (const Blocked& block : divide(rows, blocks_->rows_of_block())) {
        std::vector<Row> together;
        for (const std::size_t r : block.rows) together.push_back(rows[r]);
        std::vector<Outcome> outcomes(together.size());
        const LentColumns columns = blocks_->columns(block.shape);
        if (auto fault = blocks_->cost(*columns, together, outcomes)) throw ModelError(fault->text);
        std::size_t at = 0;
        for (std::size_t i = 0; i < outcomes.size(); ++i)
            if (outcomes[i].state == Outcome::State::costed)
                result[block.rows[i]] = costing_of(*blocks_, *columns, at++, outcomes[i].cost);
    }
    return result;
}

std::optional<Costing> Engine::cost_in_full(const Row& row, const MeasuredRun& run) const {
    const LentColumns columns = blocks_->columns({row.plies(), row.steps()});
    Outcome outcome;
    if (auto fault = blocks_->cost_given(*columns, row, run, outcome)) throw ModelError(fault->text);
    if (outcome.state == Outcome::State::refused) return std::nullopt;
    return costing_of(*blocks_, *columns, 0, outcome.cost);
}

}  // namespace flutebook::engine
