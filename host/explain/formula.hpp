// A figure that the program calculates from others, such as the price from the cost and the margin. The code that
// calculates it states the formula and its inputs.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace flutebook::explain {

struct Formula {
    /// All figures of a name, or those of one step.
    struct Input {
        std::string name;
        std::optional<std::size_t> step = {};
    };
    std::string name, unit;
    double value;
    std::string says;  // "cost / quantity x 1000"
    std::vector<Input> inputs;
    std::optional<std::size_t> step = {};  // nothing of a figure of the whole order
};

}  // namespace flutebook::explain
