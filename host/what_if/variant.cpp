#include "host/what_if/variant.hpp"

#include <algorithm>
#include <utility>

#include "host/base/errors.hpp"
#include "host/base/yaml/document.hpp"

namespace flutebook::what_if {

namespace {

// A plant that only this question makes unfit is no plant that is unfit.
workplace::Workplace changed_workplace(const workplace::Workplace& workplace, const scenario::NumberTrees& trees) {
    try {
        return workplace::with_plant(workplace, plant::read_plant(workplace.plant, trees.files()));
    } catch (const InputError& error) {
        throw InputError(InputError::Whose::request, error.lines());
    }
}

}  // namespace

scenario::NumberTrees trees_of(const workplace::Workplace& workplace, const orders::Request& request) {
    base::Diagnostics complaints;
    auto tree = base::parse_document(request.text, request.place.file, complaints);
    complaints.throw_if_any(InputError::Whose::request);
    return {workplace.plant, workplace.engine.graph().models, std::move(*tree)};
}

std::vector<what_if_answers::ChangedNumber> change_all(scenario::NumberTrees& trees,
                                                       const std::vector<scenario::NumberChange>& changes) {
    std::vector<what_if_answers::ChangedNumber> result;
    for (const scenario::NumberChange& change : changes)
        for (const scenario::MovedNumber& moved : trees.change(change))
            result.push_back({moved.path, moved.was, moved.now});
    return result;
}

void add_new_warnings(std::vector<base::Warning>& result, const std::vector<base::Warning>& now,
                      const std::vector<base::Warning>& was) {
    for (const base::Warning& warning : now)
        if (std::none_of(was.begin(), was.end(),
                         [&](const base::Warning& known) { return known.text == warning.text; }))
            result.push_back(warning);
}

Variant variant_of(const workplace::Workplace& workplace, const orders::Request& request,
                   const scenario::NumberTrees& trees) {
    workplace::Workplace changed = changed_workplace(workplace, trees);
    orders::Request again =
        orders::read_request(changed.plant, trees.request(), request.place.file, request.text, request.date);
    return {std::move(changed), std::move(again)};
}

}  // namespace flutebook::what_if
