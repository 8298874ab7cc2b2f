// The files that pages are made of beside their HTML: style sheet, scripts, icon. They lie in assets/ and are part of
// the program.
#pragma once

#include <string>
#include <vector>

namespace flutebook::pages {

struct Asset {
    std::string name;          // "flutebook.css"
    std::string served_as;     // "flutebook-0f3a61c2b7de.css": another name wherever the bytes are others
    std::string content_type;  // "text/css; charset=utf-8"
    std::string bytes;
};

/// All of them, made once. Any thread.
[[nodiscard]] const std::vector<Asset>& assets();

/// The one of this name, which is there.
[[nodiscard]] const Asset& asset(const std::string& name);

}  // namespace flutebook::pages
