#include "host/what_if/variant.hpp"

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

Variant variant_of(const workplace::Workplace& workplace, const orders::Request& request,
                   const scenario::NumberTrees& trees) {
    workplace::Workplace changed = changed_workplace(workplace, trees);
    orders::Request again =
        orders::read_request(changed.plant, trees.request(), request.place.file, request.text, request.date);
    return {std::move(changed), std::move(again)};
}

}  // namespace flutebook::what_if
