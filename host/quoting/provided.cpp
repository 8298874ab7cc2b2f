#include "host/quoting/provided.hpp"

#include <fmt/format.h>

#include "host/base/errors.hpp"
#include "host/base/near_spellings.hpp"
#include "host/engine/costing/blocks.hpp"

namespace flutebook::quoting {

std::vector<answers::ProvidedNumber> provided_by(const engine::Engine& engine, const engine::Row& row,
                                                 const std::string& model) {
    const engine::Blocks& blocks = engine.blocks();
    const engine::Columns columns = blocks.columns_of(row);
    const std::size_t m = contract::find_model(engine.graph().models, model).value();
    if (m >= engine.graph().first_late && !row.order->piece.is_first()) return {};
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
    if (contract::find_model(engine.graph().models, model)) return;
    std::vector<std::string> names;
    for (const contract::Model& loaded : engine.graph().models) names.push_back(loaded.id);
    throw InputError(InputError::Whose::request, {fmt::format("--provided: no such model is loaded: found {}{}", model,
                                                              base::did_you_mean(model, names))});
}

}  // namespace flutebook::quoting
