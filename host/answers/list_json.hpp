// The document that `quote LIST --json` writes, row by row:
// {"answer": "list", "answer_version", "plant", "currency", "currency_decimals", "warnings": [W...] (about the plant's
// files), "rows": [R...]}, in the order of the list. R = {"at" (file:line:column), "request", and what of "customer"
// and "quantity" the row gives, as texts; "price_per_thousand", "cost_per_thousand", "parts_per_thousand": {CLASS:
// amount..., "profit"}, "order_value", "price_rules", "second_currency" (as in a quote's document), "made_on",
// "roll_width_mm" (texts), "not_in_price": [N...] (W and N as in the document of a quote); with an old price
// "old_price", "difference", "difference_share" (of the old price), with its day "change": {CLASS: amount..., "profit",
// "not_explained"}; "warnings": [W...], "errors": [text...]}. A row with errors has no price.
#pragma once

#include <string>
#include <vector>

#include "host/answers/json_text.hpp"
#include "host/answers/list_answer.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::answers {

/// What begin(), add() and end() return is the document, in that order. No row is kept.
class ListStream {
public:
    /// `warnings` are those of the plant's files.
    ListStream(const plant::Plant& plant, const std::vector<base::Warning>& warnings);

    [[nodiscard]] const std::string& begin() const { return rows_.begin(); }
    [[nodiscard]] std::string add(const ListedItem& item);
    [[nodiscard]] std::string end() const { return rows_.end(); }

private:
    JsonListStream rows_;
};

}  // namespace flutebook::answers
