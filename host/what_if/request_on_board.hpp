// A request as if its file named another board.
#pragma once

#include <string>

#include "host/base/place.hpp"
#include "host/base/yaml/node.hpp"
#include "host/orders/request.hpp"

namespace flutebook::what_if {

/// The request read again, so that everything that its board must have is asked for; `place` is where messages say that
/// the board stands. Throws InputError (request).
[[nodiscard]] orders::Request request_on_board(const plant::Plant& plant, const orders::Request& request,
                                               const std::string& board, const base::Place& place);

/// The same of the tree that the request was read from, where that is not what its file says.
[[nodiscard]] orders::Request request_on_board(const plant::Plant& plant, const orders::Request& request,
                                               base::Node tree, const std::string& board, const base::Place& place);

}  // namespace flutebook::what_if
