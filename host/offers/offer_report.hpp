// An offer: the part of an answer that a customer may know, as a report. It holds prices, the box and what is agreed;
// no cost, no margin, no waste, no machine, and no name of a model, a paper or a board of the house.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/base/date.hpp"
#include "host/offers/offer_words.hpp"
#include "host/plant/plant.hpp"
#include "host/render/html_report.hpp"
#include "host/render/report.hpp"

namespace flutebook::offers {

/// How many fewer or more boxes than ordered may be delivered: shares of the quantity.
struct DeliveredQuantity {
    double under, over;
};

/// What holds beside the price; each only where the plant or the request says it.
struct Conditions {
    std::optional<base::Date> valid_until = {};
    std::optional<DeliveredQuantity> tolerance = {};
    std::string delivery = {}, payment = {};  // in the plant's own words; empty: not said
    /// Of the request's own extras, what it asks for more than one of: `delivery.deliveries`, 3.
    std::vector<std::pair<std::string, double>> asked = {};
};

/// What an offer is made of. Refers to what outlives it.
struct OfferSources {
    const plant::Plant& plant;
    const answers::RequestAnswer& answer;  // with its blanks drawn, at least one quantity of it makeable
    const OfferWords& words;
    std::string saved;  // the quote's number in the ledger; empty: the request's counts
    Conditions conditions = {};
};

/// What the plant's rules and the request say of an answer.
[[nodiscard]] Conditions conditions_of(const plant::Plant& plant, const answers::RequestAnswer& answer);

/// Whether there is a price to offer.
[[nodiscard]] bool can_be_offered(const answers::RequestAnswer& answer);

/// The folded box is drawn, and the blank where it is not folded, without creases, tabs and measures, which are the
/// house's own. Throws InputError (plant) where the file of words lacks one that this answer needs.
[[nodiscard]] render::Report offer_report(const OfferSources& sources);

/// Offers as one file, in the plant's language, on its sheets. `back`: for who reads it in the house, not in a file.
[[nodiscard]] std::string offer_page(const plant::Plant& plant, const OfferWords& words,
                                     const std::vector<render::Report>& offers,
                                     const render::PageLook::WayBack& back = {});

}  // namespace flutebook::offers
