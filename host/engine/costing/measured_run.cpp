#include "host/engine/costing/measured_run.hpp"

#include <fmt/format.h>

#include <map>
#include <string>
#include <vector>

namespace flutebook::engine {
namespace {

// A number that a run is known by, in the host's unit, by its axis.
struct Measured {
    std::string unit;
    std::vector<double> values;
};

std::vector<double> lost_by_step(const MeasuredRun& run) {
    std::vector<double> made(run.fed.size(), 0.0);
    for (const auto& cause : run.losses)
        for (std::size_t k = 0; k < made.size(); ++k) made[k] += cause[k];
    return made;
}

std::map<std::string, Measured> measured(const MeasuredRun& run) {
    return {{"run.fed", {"1", run.fed}},
            {"run.good", {"1", run.good}},
            {"web.length", {"m", {run.web_length_m}}},
            {"web.area", {"m2", {run.web_area_m2}}},
            {"paper.issued", {"kg", run.issued_kg}},
            {"adhesive.dry", {"kg", {run.adhesive_kg}}},
            {"scrap.mass", {"kg", lost_by_step(run)}}};
}

}  // namespace

std::optional<Fault> write_measured_run(Columns& columns, const Slots& slots, const Graph& graph,
                                        const MeasuredRun& run) {
    const contract::Model& model = graph.models[graph.shedder];
    const ModelSlots& own = slots.models[graph.shedder];
    columns.begin_results(graph.shedder, 1);
    const auto known = measured(run);
    for (std::size_t p = 0; p < model.provides.size(); ++p) {
        const contract::Name& name = model.provides[p];
        const auto found = known.find(name.name);
        const auto conversion = found == known.end() ? std::nullopt : plant::conversion(found->second.unit, name.unit);
        if (!conversion)
            return Fault{0, fmt::format("{}: {} cannot be measured after production; cost the order without this model",
                                        model.where(), name.name)};
        for (std::size_t i = 0; i < columns.extent(own.provides[p]); ++i)
            *columns.column(own.provides[p], i) = (*conversion)(found->second.values[i]);
    }
    for (std::size_t c = 0; c < own.losses.size(); ++c)
        for (std::size_t k = 0; k < columns.extent(own.losses[c]); ++k)
            *columns.column(own.losses[c], k) = run.losses[c][k];
    return std::nullopt;
}

}  // namespace flutebook::engine
