// What a model did wrong in a block.
#pragma once

#include <cstddef>
#include <string>

namespace flutebook::engine {

/// The first row of the block that shows it, and the finished sentence: file, model, cause.
struct Fault {
    std::size_t row;
    std::string text;
};

}  // namespace flutebook::engine
