// Which figure of a quote is to be explained, by the name that a person or the answer's document gives it.
#pragma once

#include <cstddef>
#include <optional>
#include <string>

#include "host/engine/engine.hpp"
#include "host/orders/request.hpp"

namespace flutebook::quoting {

/// `price@500`: the figure, and at which quantity of the request; at each where none is named.
struct ExplainedFigure {
    std::string name;  // as explain() has it: "price", also where the document's key was given, "price_per_thousand"
    std::optional<double> quantity;

    [[nodiscard]] bool is_wanted_at(double of_request) const { return !quantity || *quantity == of_request; }
};

/// Throws InputError (request) where no figure is called so, where the request asks for no such quantity, and for the
/// price of a set, whose pieces have none.
[[nodiscard]] ExplainedFigure explained_figure(const engine::Engine& engine, const orders::Request& request,
                                               std::size_t pieces, const std::string& asked);

}  // namespace flutebook::quoting
