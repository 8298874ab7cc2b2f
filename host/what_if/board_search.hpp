// The cheapest board that bears what is asked: the request costed on every board of the plant that does.
#pragma once

#include "host/orders/request.hpp"
#include "host/what_if_answers/board_search_answer.hpp"
#include "host/workplace/workplace.hpp"

namespace flutebook::what_if {

/// Boards in the order of boards.yaml; at each quantity the one that costs least, the first of equals. Throws
/// InputError (request) where a compression is asked for and the box has no estimate; ModelError where a model is at
/// fault.
[[nodiscard]] what_if_answers::BoardSearch search_boards(const workplace::Workplace& workplace,
                                                         const orders::Request& request,
                                                         const what_if_answers::AskedStrength& asked, unsigned threads);

}  // namespace flutebook::what_if
