// The page for a request that was refused or failed: its messages.
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
