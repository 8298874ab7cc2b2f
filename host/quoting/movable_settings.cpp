#include "host/quoting/movable_settings.hpp"

#include <algorithm>
#include <cmath>

namespace flutebook::quoting {

namespace {

std::vector<double> ends_and_one(contract::Range range) {
    std::vector<double> result;
    for (const double value : {range.low, range.high, 1.0})
        if (std::isfinite(value) && range.holds(value) &&
            std::find(result.begin(), result.end(), value) == result.end())
            result.push_back(value);
    return result;
}

std::vector<bool> reached_from(const engine::Graph& graph, std::size_t model) {
    std::vector<bool> result(graph.models.size(), false);
    result[model] = true;
    const auto is_fed = [&](const engine::Source& source) {
        return source.kind != engine::Source::Kind::fact && result[source.model];
    };
    for (std::size_t m = model + 1; m < graph.models.size(); ++m) {
        result[m] = model < graph.first_late && m >= graph.first_late;
        for (const engine::Link& need : graph.needs[m]) result[m] = result[m] || is_fed(need.source);
        for (const auto& link : graph.settings[m]) result[m] = result[m] || (link && is_fed(link->source));
    }
    return result;
}

}  // namespace

std::vector<MovableSetting> movable_settings(const engine::Engine& engine) {
    const engine::Graph& graph = engine.graph();
    std::vector<MovableSetting> result;
    for (std::size_t m = 0; m < graph.models.size(); ++m)
        for (std::size_t s = 0; s < graph.models[m].settings.size(); ++s) {
            const contract::Setting& declared = graph.models[m].settings[s];
            if (declared.varies_by == contract::VariesBy::request && declared.choices.empty() && !graph.settings[m][s])
                result.push_back({m, s, engine.settings()[m][s].request_index, ends_and_one(declared.range)});
        }
    return result;
}

std::vector<std::vector<bool>> reached_models(const engine::Graph& graph) {
    std::vector<std::vector<bool>> result;
    for (std::size_t m = 0; m < graph.models.size(); ++m) result.push_back(reached_from(graph, m));
    return result;
}

}  // namespace flutebook::quoting
