// A list of slotted boxes as somebody would price it who knew its columns and the ten models by heart and checked
// nothing: lines split at their commas, the cost of each way by one plain function, the price into a line. The ways to
// make a box are the host's own, since machines and rolls are no business of a model.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "host/plant/plant.hpp"
#include "ledger/values/money.hpp"
#include "tests/bench/plain_cost.hpp"

namespace flutebook::bench {

/// The columns that such a list has, in this order.
inline constexpr const char* plain_list_header =
    "request,customer,date,style,length,width,height,board,quantity,margin,colours,consumables.coverage,"
    "delivery.distance";

/// Where the blank comes from: drawn from its style as the host draws any, or by the formula of this one style.
enum class BlankBy { style, formula };

/// Prices every row of `list` into `answer`; the prices per thousand in order. Ends the program at a row that has no
/// price.
[[nodiscard]] std::vector<Money> price_plain_list(const plant::Plant& plant, const Prices& prices, BlankBy blank,
                                                  const std::string& list, const std::string& answer);

}  // namespace flutebook::bench
