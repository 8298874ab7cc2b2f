// Whether a page has a piece of text.
#pragma once

#include <string>

namespace flutebook::fixture {

[[nodiscard]] inline bool page_holds(const std::string& page, const std::string& piece) {
    return page.find(piece) != std::string::npos;
}

}  // namespace flutebook::fixture
