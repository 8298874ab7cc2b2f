// What a library's file declares, read from its bytes alone: nothing is loaded, and every value is checked. Every
// offset and count of the file is held against its size, so that no damage can lead a reader astray.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace flutebook::plugin_check {

struct SharedObject {
    struct Symbol {
        std::string name;
        bool is_data;
    };
    std::vector<Symbol> exported;       // what others can see, in the order of the file
    std::vector<std::string> needed;    // the libraries it asks for, by name
    std::vector<std::string> searched;  // folders of its own that it has them looked for in
};

/// Either the contents, or why there are none, as a sentence goes on after "the plugin": "is no library: ...".
struct ReadObject {
    std::optional<SharedObject> object;
    std::string problem;
};

[[nodiscard]] ReadObject read_shared_object(std::span<const std::byte> bytes);

}  // namespace flutebook::plugin_check
