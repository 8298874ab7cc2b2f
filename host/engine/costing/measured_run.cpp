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
    std::vector<double> result(run.fed.size(), 0.0);
    for (const auto& cause : run.losses)
        for (std::size_t k = 0; k < result.size(); ++k) result[k] += cause[k];
    return result;
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
    const ModelSlots& model_slots = slots.models[graph.shedder];
    columns.begin_results(graph.shedder, 1);
    const auto known = measured(run);
    for (std::size_t p = 0; p < model.provides.size(); ++p) {
        const contract::Name& name = model.provides[p];
        const auto found = known.find(name.name);
        const auto conversion = found == known.end() ? std::nullopt : fields::conversion(found->second.unit, name.unit);
        if (!conversion)
            return Fault{0, fmt::format("{}: {} cannot be measured after production; cost the order without this model",
                                        model.where(), name.name)};
        for (std::size_t i = 0; i < columns.extent(model_slots.provides[p]); ++i)
            *columns.column(model_slots.provides[p], i) = (*conversion)(found->second.values[i]);
    }
    for (std::size_t c = 0; c < model_slots.losses.size(); ++c)
        for (std::size_t k = 0; k < columns.extent(model_slots.losses[c]); ++k)
            *columns.column(model_slots.losses[c], k) = run.losses[c][k];
    return std::nullopt;
}

}  // namespace flutebook::engine
