// Which processes there are: whether what was to be gone is gone.
#pragma once

#include <string>

namespace flutebook::check {

/// Whether any process, other than one that only waits to be waited for, has this word on its command line.
[[nodiscard]] bool is_running(const std::string& word);

/// The same, after it had a few seconds to end.
[[nodiscard]] bool is_still_running(const std::string& word);

/// A plugin that was built for the tests here.
[[nodiscard]] inline std::string plugin(const std::string& name) {
    return std::string(FLUTEBOOK_CHECK_PLUGINS) + "/" + name + ".so";
}

}  // namespace flutebook::check
