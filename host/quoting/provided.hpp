// What one model provides for a costed row: numbers that other models take, and that no cost line shows.
#pragma once

#include <string>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/engine/engine.hpp"

namespace flutebook::quoting {

/// In the order that the model declares them, in its own units; none where a late model is not costed with this piece.
/// The row was costed without a fault; `model` is loaded. Throws ModelError.
[[nodiscard]] std::vector<answers::ProvidedNumber> provided_by(const engine::Engine& engine, const engine::Row& row,
                                                               const std::string& model);

/// Throws InputError (request) where no such model is loaded.
void expect_model(const engine::Engine& engine, const std::string& model);

}  // namespace flutebook::quoting
