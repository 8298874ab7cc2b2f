// A request with other numbers: the plant read again from its changed trees, its models taking their settings from it,
// and the request read against it.
#pragma once

#include <vector>

#include "host/orders/request.hpp"
#include "host/scenario/number_trees.hpp"
#include "host/workplace/workplace.hpp"

namespace flutebook::what_if {

/// The numbers of a plant and of one request. Refers to the workplace.
[[nodiscard]] scenario::NumberTrees trees_of(const workplace::Workplace& workplace, const orders::Request& request);

struct Variant {
    workplace::Workplace workplace;
    orders::Request request;
};

/// What the trees say now, on the day of `request`. No file is read or written. Throws InputError (request) with every
/// value that cannot stand.
[[nodiscard]] Variant variant_of(const workplace::Workplace& workplace, const orders::Request& request,
                                 const scenario::NumberTrees& trees);

}  // namespace flutebook::what_if
