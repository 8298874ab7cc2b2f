// The box that is offered, in a customer's words: its style and size, its board by what it is made of, its weight.
#pragma once

#include <string>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/offers/offer_words.hpp"
#include "host/plant/plant.hpp"
#include "host/render/report.hpp"

namespace flutebook::offers {

/// "boxes", "sheets" or "sets": the key of the word for what quantities count.
[[nodiscard]] std::string counted_in(const answers::RequestAnswer& answer);

/// The box itself, or the pieces of the set, at one quantity that can be made. Lives as long as the answer.
[[nodiscard]] std::vector<const answers::Quote*> blanks_at(const answers::RequestAnswer& answer, std::size_t quantity);

/// The code of a board or a paper is the house's: flutes and grammages stand here instead.
[[nodiscard]] render::Facts box_facts(const plant::Plant& plant, const answers::RequestAnswer& answer,
                                      const OfferWords& words);

}  // namespace flutebook::offers
