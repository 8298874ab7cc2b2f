// Warnings about a request's box: length and width exchanged, and a style that nobody has checked.
#pragma once

#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/engine/engine.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::quoting {

/// Whether style_warnings() has any for an answer to this request.
[[nodiscard]] bool has_style_warning(const plant::Plant& plant, const orders::Request& request);

/// Of an answer that holds its quantities. A box whose length is below its width is priced the other way round as well.
/// Throws ModelError as quote() does.
[[nodiscard]] std::vector<base::Warning> style_warnings(const plant::Plant& plant, const engine::Engine& engine,
                                                        const answers::RequestAnswer& answer);

}  // namespace flutebook::quoting
