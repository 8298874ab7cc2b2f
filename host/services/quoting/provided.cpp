#include "host/services/quoting/provided.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/base/errors.hpp"
#include "host/base/near_spellings.hpp"
#include "host/engine/costing/blocks.hpp"

namespace flutebook::services {

namespace {

std::size_t index_of(const engine::Graph& graph, const std::string& id) {
    const auto found = std::find_if(graph.models.begin(), graph.models.end(),
                                    [&](const contract::Model& model) { return model.id == id; });
    return static_cast<std::size_t>(found - graph.models.begin());
}

}  // namespace

std::vector<answers::ProvidedNumber> provided_by(const engine::Engine& engine, const engine::Row& row,
                                                 const std::string& model) {
    const engine::Blocks& blocks = engine.blocks();
    engine::Columns columns = blocks.columns({row.plies(), row.steps()});
    engine::Outcome outcome;
    if (const auto fault = blocks.run(columns, {&row, 1}, {&outcome, 1})) throw ModelError(fault->text);
    const std::size_t m = index_of(engine.graph(), model);
    const std::vector<contract::Name>& names = engine.graph().models[m].provides;
    std::vector<answers::ProvidedNumber> result;
    for (std::size_t n = 0; n < names.size(); ++n) {
        const engine::Slot slot = blocks.slots().models[m].provides[n];
        for (std::size_t i = 0; i < columns.extent(slot); ++i)
            result.push_back({names[n].name, names[n].axis, i, names[n].unit, *columns.column(slot, i)});
    }
    return result;
}

void expect_model(const engine::Engine& engine, const std::string& model) {
    std::vector<std::string> names;
    for (const contract::Model& loaded : engine.graph().models) names.push_back(loaded.id);
    if (std::find(names.begin(), names.end(), model) != names.end()) return;
    throw InputError(InputError::Whose::request, {fmt::format("--provided: no such model is loaded: found {}{}", model,
                                                              base::did_you_mean(model, names))});
}

}  // namespace flutebook::services
