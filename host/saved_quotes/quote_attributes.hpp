// What a saved quote is found by, and what is said of it later: the names of a quote's attributes in the ledger, and
// their values. The ledger keeps and compares them; what they mean is known here alone.
//
// A record of kind `found-by`, one a quote:
//   customer style board currency   texts; customer is left out where the request gives none
//   length width height             of the inside, in thousandths of a millimetre; of a drawing its blank, height 0
//   quantities                      text: "500 1000 5000"
//   price_first price_last          per thousand at the first and the last quantity, in ten-thousandths of the
//   currency;
//                                   left out where that quantity cannot be made
//   decimals                        of the currency's coin
//   copied_from                     text: the quote that the request was copied from; left out where there is none
// A record of kind `mark`, as often as somebody says so:
//   state                           text: won lost open
//   why                             text; left out where no reason was given
#pragma once

#include <string>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/plant/plant.hpp"
#include "ledger/reading/quotes.hpp"

namespace flutebook::saved_quotes {

/// The kind of record that says what became of a quote.
inline constexpr const char* mark_kind = "mark";

/// Of an answer that is to be saved. `plant` has the request's board and the currency.
[[nodiscard]] std::vector<ledger::QuoteAttribute> attributes_of(const plant::Plant& plant,
                                                                const answers::RequestAnswer& answer);

/// A length as an attribute holds it, and back.
[[nodiscard]] std::int64_t to_micrometres(double length_mm);
[[nodiscard]] double to_millimetres(std::int64_t length_um);

/// Of quotes that an older version saved: works their attributes out from what was kept with them.
class KeptAttributes {
public:
    /// Where the kept files say less than they should, so does the result: it has at least one attribute.
    [[nodiscard]] std::vector<ledger::QuoteAttribute> of(const ledger::SavedQuote& quote);

private:
    // Quotes that follow one another mostly kept the same files.
    std::string texts_of_plant_;
    std::optional<plant::Plant> plant_;
};

}  // namespace flutebook::saved_quotes
