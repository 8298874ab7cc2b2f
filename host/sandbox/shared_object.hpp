// What a library's file declares, read from its bytes: nothing is loaded. Every offset and count is checked against the
// size of the file, so that a damaged file cannot make the reader leave it.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace flutebook::sandbox {

struct SharedObject {
    struct Symbol {
        std::string name;
        bool is_data;
        bool is_unique;  // one for the whole process: libraries that have it share it, even across local binding
    };
    std::vector<Symbol> exported;       // visible to others, in the order of the file
    std::vector<std::string> needed;    // the names of the libraries that it needs
    std::vector<std::string> searched;  // the folders of its search path for them
    bool needs_executable_stack = false;
};

/// Either the contents, or why there are none, as the predicate of a sentence: "is no library: ...".
struct ReadObject {
    std::optional<SharedObject> object;
    std::string problem;
};

[[nodiscard]] ReadObject read_shared_object(std::span<const std::byte> bytes);

}  // namespace flutebook::sandbox
