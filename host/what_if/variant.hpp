// A request with other numbers: the plant read again from its changed trees, its models taking their settings from it,
// and the request read against it.
#pragma once

#include <vector>

#include "host/orders/request.hpp"
#include "host/scenario/number_change.hpp"
#include "host/scenario/number_trees.hpp"
#include "host/what_if_answers/changed_number.hpp"
#include "host/workplace/workplace.hpp"

namespace flutebook::what_if {

/// The numbers of a plant and of one request. Refers to the workplace.
[[nodiscard]] scenario::NumberTrees trees_of(const workplace::Workplace& workplace, const orders::Request& request);

/// Makes the changes one after the other; says what they moved. Throws InputError (request) where a path or a value is
/// wrong.
std::vector<what_if_answers::ChangedNumber> change_all(scenario::NumberTrees& trees,
                                                       const std::vector<scenario::NumberChange>& changes);

struct Variant {
    workplace::Workplace workplace;
    orders::Request request;
};

/// What the trees say now, on the day of `request`. No file is read or written. Throws InputError (request) with every
/// value that cannot stand.
[[nodiscard]] Variant variant_of(const workplace::Workplace& workplace, const orders::Request& request,
                                 const scenario::NumberTrees& trees);

/// Those of `now` whose sentence is not among `was`.
void add_new_warnings(std::vector<base::Warning>& result, const std::vector<base::Warning>& now,
                      const std::vector<base::Warning>& was);

}  // namespace flutebook::what_if
