// A saved quote opened again: the plant and the request as they were when it was saved.
//
// Its plugins are not kept, only which they were: models are looked up where the plant has them now.
#pragma once

#include <string>
#include <vector>

#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"
#include "ledger/reading/quotes.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::services {

struct QuotedPlant {
    plant::Plant plant;
    orders::Request request;
};

/// `today` is the plant as it is now: plugins come from its folder, held to the pins that it has now. A machine of
/// `ran` that the quote's files lack came later, and is taken as today's files have it. Throws InputError (plant) where
/// the files can no longer be read, or neither has a machine that ran, InputError (request), and LedgerError where a
/// part of the quote is not there.
[[nodiscard]] QuotedPlant quoted_plant(const ledger::SavedQuote& quote, const plant::Plant& today,
                                       const std::vector<std::string>& ran);

/// What the quote, as it was answered, says that this quantity costs.
[[nodiscard]] Money saved_cost(const ledger::SavedQuote& quote, double quantity);

}  // namespace flutebook::services
