// What the requests of a list cost: many at once, since the engine is quickest over many rows.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/answers/list_answer.hpp"
#include "host/base/place.hpp"
#include "host/orders/request.hpp"
#include "host/workplace/workplace.hpp"

namespace flutebook::lists {

/// An item that was costed, or why it was not.
struct CostedItem {
    enum class State { costed, refused, unfit };
    State state = State::costed;
    std::optional<answers::ItemPrice> price;
    std::vector<std::string> errors;  // finished sentences with their places
    std::vector<base::Warning> warnings;
};

/// Each request has one quantity. The answer of each is that of quoting::quote(), to the last digit and whatever stands
/// beside it in the list. Any thread, each at a bench of its own.
[[nodiscard]] std::vector<CostedItem> cost_items(const workplace::Workplace& workplace,
                                                 const std::vector<const orders::Request*>& requests);

}  // namespace flutebook::lists
