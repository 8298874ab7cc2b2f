#include "host/what_if/request_on_board.hpp"

#include "host/base/errors.hpp"
#include "host/base/yaml/document.hpp"

namespace flutebook::what_if {

orders::Request request_on_board(const plant::Plant& plant, const orders::Request& request, const std::string& board,
                                 const base::Place& place) {
    base::Diagnostics complaints;
    auto tree = base::parse_document(request.text, request.place.file, complaints);
    complaints.throw_if_any(InputError::Whose::request);
    base::entry_of(*tree, "board", base::Node::Kind::text, {}) = base::text_node(board, place);
    return orders::read_request(plant, *tree, request.place.file, request.text, request.date);
}

}  // namespace flutebook::what_if
