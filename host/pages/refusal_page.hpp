// The page of a request that was refused, or that something failed on: what is wrong, sentence by sentence.
#pragma once

#include <string>
#include <vector>

#include "host/pages/frame.hpp"

namespace flutebook::pages {

struct Refusal {
    int status;                      // of HTTP
    std::vector<std::string> lines;  // finished sentences
};

[[nodiscard]] std::string refusal_page(const Frame& frame, const Refusal& refusal);

}  // namespace flutebook::pages
