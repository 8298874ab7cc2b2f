// The workplace as a saved quote knew it: the plant's files and the request as they were kept, worked by the plugins
// that are there today.
//
// Nothing is written anywhere: the kept texts are read where they are, under the names they had. What is wrong with
// them begins with the quote's number, so that a reader does not look for it in today's files.
#pragma once

#include <string>
#include <vector>

#include "host/orders/request.hpp"
#include "host/workplace/workplace.hpp"
#include "ledger/reading/quotes.hpp"

namespace flutebook::saved_quotes {

/// The plant as it was kept, which knows of the ledger's share of trim only that of the quote. Its plugins are to be
/// looked for in `folder`, where the plant is today. Throws InputError (plant) where this program no longer takes its
/// files, LedgerError where a part is not there.
[[nodiscard]] plant::Plant saved_plant(const ledger::SavedQuote& quote, const std::string& folder);

/// The same opened for work. Throws InputError (plant) also where the kept settings no longer fit the plugins, and
/// ModelError where a plugin is not there or not fit.
[[nodiscard]] workplace::Workplace open_saved(const ledger::SavedQuote& quote, const std::string& folder);

/// The request as it was kept, with prices of the day that was asked for, or of `day`, read against any plant: the
/// saved one, or today's. Throws InputError (request) where that plant cannot take it.
[[nodiscard]] orders::Request saved_request(const ledger::SavedQuote& quote, const plant::Plant& plant,
                                            std::optional<base::Date> day = std::nullopt);

struct QuotedPlant {
    plant::Plant plant;
    orders::Request request;
};

/// The plant and the request as they were, for costing an order that was made. `today` is the plant as it is now:
/// plugins come from its folder, held to the pins that it has now. A machine of `ran` that the quote's files lack came
/// later, and is taken as today's files have it. Throws InputError (plant) where the files can no longer be read, or
/// neither has a machine that ran, InputError (request), and LedgerError where a part of the quote is not there.
[[nodiscard]] QuotedPlant quoted_plant(const ledger::SavedQuote& quote, const plant::Plant& today,
                                       const std::vector<std::string>& ran);

}  // namespace flutebook::saved_quotes
