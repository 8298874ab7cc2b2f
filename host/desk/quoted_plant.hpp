// A saved quote opened again: the plant and the request as they were when it was saved.
//
// Its plugins are not kept, only which they were: models are looked up where the plant has them now.
#pragma once

#include <string>
#include <vector>

#include "host/catalogue/plant.hpp"
#include "host/catalogue/request.hpp"
#include "host/engine/graph.hpp"
#include "ledger/money.hpp"
#include "ledger/quotes.hpp"

namespace flutebook::desk {

struct QuotedPlant {
    catalogue::Plant plant;
    catalogue::Request request;
};

/// The files of the quote are written into a folder of nobody else's, read, and gone when this returns. `today` is the
/// plant's folder as it is now: plugins come from there, held to the pins that it has now. A machine of `ran` that the
/// quote's files lack came later, and is taken as today's files have it. Throws InputError (plant) where the files can
/// no longer be read, or neither has a machine that ran.
[[nodiscard]] QuotedPlant quoted_plant(const ledger::SavedQuote& quote, const catalogue::Plant& today,
                                       const std::vector<std::string>& ran);

/// A plugin that is another one now than when the quote was saved.
struct PluginChange {
    std::string id;
    std::string version_then, version_now;
    std::string sha256_then, sha256_now;
};

/// In the order of the graph. A model that the quote does not know was another one too, with nothing to tell of it.
[[nodiscard]] std::vector<PluginChange> changes_since(const ledger::SavedQuote& quote, const engine::Graph& graph);

/// What the quote, as it was answered, says that this quantity costs.
[[nodiscard]] Money saved_cost(const ledger::SavedQuote& quote, double quantity);

}  // namespace flutebook::desk
