#include "host/what_if/request_on_board.hpp"

#include <utility>

#include "host/base/errors.hpp"
#include "host/base/yaml/document.hpp"

namespace flutebook::what_if {

orders::Request request_on_board(const plant::Plant& plant, const orders::Request& request, const std::string& board,
                                 const base::Place& place) {
    base::Diagnostics complaints;
    auto tree = base::parse_document(request.text, request.place.file, complaints);
    complaints.throw_if_any(InputError::Whose::request);
    return request_on_board(plant, request, std::move(*tree), board, place);
}

orders::Request request_on_board(const plant::Plant& plant, const orders::Request& request, base::Node tree,
                                 const std::string& board, const base::Place& place) {
    base::entry_of(tree, "board", base::Node::Kind::text, {}) = base::text_node(board, place);
    return orders::read_request(plant, tree, request.place.file, request.text, request.date);
}

}  // namespace flutebook::what_if
