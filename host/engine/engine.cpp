#include "host/engine/engine.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <exception>
#include <filesystem>
#include <map>
#include <mutex>
#include <thread>

#include "host/base/errors.hpp"
#include "host/contract/description.hpp"
#include "host/contract/evaluator.hpp"
#include "host/contract/library.hpp"
#include "host/contract/plugin_file.hpp"
#include "host/contract/trust.hpp"
#include "host/engine/costing/blocks.hpp"
#include "host/engine/costing/fill.hpp"
#include "host/engine/costing/full_costing.hpp"
#include "host/engine/costing/workbench.hpp"

namespace flutebook::engine {
namespace {

std::string file_of(const plant::Plant& plant, const std::string& installed, const plant::ModelSettings& entry) {
    const std::string file = entry.served_by() + ".so";
    const auto plants_file = std::filesystem::path(plant.folder) / "plugins" / file;
    if (std::filesystem::exists(plants_file)) return plants_file.string();
    const auto installed_file = std::filesystem::path(installed) / file;
    if (std::filesystem::exists(installed_file)) return installed_file.string();
    throw ModelError(
        fmt::format("{}: model {}: no such plugin: found neither {} nor {}; build it and put it there, or "
                    "take the entry out",
                    base::place_text(entry.place), entry.served_by(), plants_file.string(), installed_file.string()));
}

void check_pin(const plant::Plant& plant, const std::string& id, const contract::PluginFile& file) {
    for (const plant::PinnedFile& pin : plant.pinned)
        if (pin.model == id && pin.sha256 != file.sha256())
            throw ModelError(
                fmt::format("{}:{}:{}: sha256.{}: {} is another file: found {}, expected {}; put back the "
                            "file that was meant, or pin this one",
                            pin.place.file.text(), pin.place.line, pin.place.column, pin.model, file.name(),
                            file.sha256(), pin.sha256));
}

// What stands between the host and a plugin's file; each may be null.
struct PluginGuards {
    contract::Trust* trust;
    contract::IsolatedLoader* isolated_loader;
};

const plant::IsolatedModel* isolation_of(const plant::Plant& plant, const std::string& id) {
    const auto found =
        std::find_if(plant.isolated.begin(), plant.isolated.end(),
                     [&](const plant::IsolatedModel& isolated_model) { return isolated_model.model == id; });
    return found == plant.isolated.end() ? nullptr : &*found;
}

// Whether the model works in a process of its own: as the plant says, else as it came here.
bool works_apart(const plant::IsolatedModel* isolation, const contract::PluginFile& file, const PluginGuards& guards) {
    if (isolation != nullptr) return isolation->where == plant::IsolatedModel::Where::process;
    return guards.trust != nullptr && guards.isolated_loader != nullptr && !guards.trust->is_installed(file);
}

contract::Model open(const plant::Plant& plant, const std::string& id, contract::PluginFile file,
                     const PluginGuards& guards) {
    const plant::IsolatedModel* isolation = isolation_of(plant, id);
    if (!works_apart(isolation, file, guards))
        return contract::describe(contract::load_plugin(file), file.name(), file.id());
    // An isolated model never falls back to running in this process.
    if (guards.isolated_loader == nullptr)
        throw ModelError(fmt::format(
            "{}:{}:{}: isolation.{}: this program has no other process to give it; take the "
            "entry out",
            isolation->place.file.text(), isolation->place.line, isolation->place.column, isolation->model));
    return guards.isolated_loader->open(std::move(file));
}

// A model that serves under another id takes that id; two that provide the same names could not stand side by side.
void rename(contract::Model& model, const plant::ModelSettings& entry) {
    if (!model.provides.empty())
        throw ModelError(
            fmt::format("{}: plugins.{}: {} cannot be loaded under another id: it provides {}; only a model that "
                        "provides nothing can",
                        base::place_text(entry.place), entry.id, model.where(), model.provides.front().name));
    model.id = entry.id;
}

// An entry of plugins.yaml, and the file that serves it.
struct ListedFile {
    const plant::ModelSettings* entry;
    contract::PluginFile file;
};

ListedFile read(const plant::Plant& plant, const std::string& installed, const plant::ModelSettings& entry) {
    contract::PluginFile file = contract::PluginFile::read(file_of(plant, installed, entry));
    file.check_place();
    check_pin(plant, entry.id, file);
    return {&entry, std::move(file)};
}

contract::Model load(const plant::Plant& plant, ListedFile listed, const PluginGuards& guards) {
    if (guards.trust != nullptr) guards.trust->check(listed.file);
    const std::string sha256 = listed.file.sha256();
    contract::Model model = open(plant, listed.entry->id, std::move(listed.file), guards);
    model.sha256 = sha256;
    if (listed.entry->model) rename(model, *listed.entry);
    return model;
}

// Calls `act` for each element; returns the complaints of all.
template <typename Elements, typename Act>
std::vector<std::string> complaints(Elements&& elements, const Act& act) {
    std::vector<std::string> errors;
    for (auto& element : elements) {
        try {
            act(element);
        } catch (const ModelError& error) {
            errors.insert(errors.end(), error.lines().begin(), error.lines().end());
        }
    }
    return errors;
}

std::vector<contract::Model> load_all(const plant::Plant& plant, const std::string& installed,
                                      const PluginGuards& guards) {
    std::vector<ListedFile> files;
    std::vector<std::string> errors = complaints(
        plant.models, [&](const plant::ModelSettings& entry) { files.push_back(read(plant, installed, entry)); });
    std::vector<const contract::PluginFile*> all;
    for (const ListedFile& listed : files) all.push_back(&listed.file);
    if (guards.trust != nullptr) guards.trust->prepare(all);

    std::vector<contract::Model> models;
    for (std::string& error :
         complaints(files, [&](ListedFile& listed) { models.push_back(load(plant, std::move(listed), guards)); }))
        errors.push_back(std::move(error));
    if (!errors.empty()) throw ModelError(std::move(errors));
    return models;
}

// Rows in blocks of one shape each, first pieces and others apart, in the order in which the shapes and rows first
// come. Blocks depend on the rows alone, so that a fault names the same row whatever the number of threads.
struct Blocked {
    Shape shape{};
    std::vector<std::size_t> rows;
};

std::vector<Blocked> divide(std::span<const Row> rows) {
    std::vector<Blocked> result;
    std::map<std::pair<Shape, bool>, std::size_t> open;  // the block of each shape that still has room
    for (std::size_t r = 0; r < rows.size(); ++r) {
        const Shape shape{rows[r].plies(), rows[r].steps()};
        auto [at, is_new] = open.try_emplace({shape, rows[r].order->piece.is_first()}, result.size());
        if (!is_new && result[at->second].rows.size() == block_rows) {
            at->second = result.size();
            is_new = true;
        }
        if (is_new) {
            result.emplace_back().shape = shape;
            result.back().rows.reserve(block_rows);
        }
        result[at->second].rows.push_back(r);
    }
    return result;
}

// The work of one thread: takes the next block until none is left.
class CostingThread {
public:
    CostingThread(Workbench& bench, std::span<const Row> rows, const std::vector<Blocked>& work,
                  std::span<Outcome> outcomes)
        : bench_(bench), rows_(rows), work_(work), outcomes_(outcomes) {}

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
        std::vector<Outcome> outcomes(block.rows.size());
        for (const std::size_t r : block.rows) rows.push_back(rows_[r]);
        const auto fault = bench_.blocks().cost(bench_.columns(block.shape), rows, outcomes);
        if (fault && (!fault_ || block.rows[fault->row] < fault_->row))
            fault_ = Fault{block.rows[fault->row], fault->text};
        for (std::size_t i = 0; i < block.rows.size(); ++i) outcomes_[block.rows[i]] = outcomes[i];
    }

    Workbench& bench_;
    std::span<const Row> rows_;
    const std::vector<Blocked>& work_;
    std::span<Outcome> outcomes_;
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
    return {join(load_all(plant, installed, {trust, elsewhere}), plant.preferences), plant};
}

Engine Engine::with_settings_of(const plant::Plant& plant) const {
    return {graph(), plant};
}

base::Diagnostics Engine::setting_faults(const plant::PlantReading& reading, const std::string& installed,
                                         contract::Trust* trust, contract::IsolatedLoader* elsewhere) {
    const Graph graph = join(load_all(reading.plant, installed, {trust, elsewhere}), reading.plant.preferences);
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
    const std::vector<Blocked> work = divide(rows);
    std::vector<Outcome> outcomes(rows.size());
    const std::size_t wanted = std::clamp<std::size_t>(threads, 1, std::max<std::size_t>(work.size(), 1));
    std::atomic<std::size_t> next = 0;
    std::vector<Workbench> benches;
    benches.reserve(wanted);
    for (std::size_t w = 0; w < wanted; ++w) benches.emplace_back(*blocks_);
    std::vector<CostingThread> workers;
    workers.reserve(wanted);
    for (Workbench& bench : benches) workers.emplace_back(bench, rows, work, outcomes);
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

std::vector<Outcome> Engine::cost(std::span<const Row> rows, Workbench& bench) const {
    const std::vector<Blocked> work = divide(rows);
    std::vector<Outcome> outcomes(rows.size());
    std::atomic<std::size_t> next = 0;
    CostingThread here(bench, rows, work, outcomes);
    here.run(next);
    here.rethrow();
    if (here.fault() != nullptr) throw ModelError(here.fault()->text);
    return outcomes;
}

std::optional<Costing> Engine::cost_in_full(const Row& row) const {
    Workbench bench(*blocks_);
    return cost_in_full(row, bench);
}

std::optional<Costing> Engine::cost_in_full(const Row& row, Workbench& bench) const {
    return std::move(cost_in_full({&row, 1}, bench).front());
}

// The columns of a block in which a row was refused hold the others closed up.
std::vector<std::optional<Costing>> Engine::cost_in_full(std::span<const Row> rows, Workbench& bench) const {
    std::vector<std::optional<Costing>> result(rows.size());
    for (const Blocked& block : divide(rows)) {
        std::vector<Row> together;
        for (const std::size_t r : block.rows) together.push_back(rows[r]);
        std::vector<Outcome> outcomes(together.size());
        Columns& columns = bench.columns(block.shape);
        if (auto fault = blocks_->cost(columns, together, outcomes)) throw ModelError(fault->text);
        std::size_t at = 0;
        for (std::size_t i = 0; i < outcomes.size(); ++i)
            if (outcomes[i].state == Outcome::State::costed)
                result[block.rows[i]] = costing_of(*blocks_, columns, at++, outcomes[i].cost);
    }
    return result;
}

std::optional<Costing> Engine::cost_in_full(const Row& row, const MeasuredRun& run) const {
    Columns columns = blocks_->columns({row.plies(), row.steps()});
    Outcome outcome;
    if (auto fault = blocks_->cost_given(columns, row, run, outcome)) throw ModelError(fault->text);
    if (outcome.state == Outcome::State::refused) return std::nullopt;
    return costing_of(*blocks_, columns, 0, outcome.cost);
}

}  // namespace flutebook::engine
