// State of the whole process, recorded before and after a library is loaded to see what the loading changed.
#pragma once

#include <sys/types.h>

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace flutebook::sandbox {

/// The parts of the state that loading a library must not change.
enum class KeptState { signals, locale, environment, folder, threads, descriptors, file_mode };

struct ProcessState {
    std::map<int, const void*> handlers;  // by signal
    std::string locale;
    std::vector<std::string> environment;
    std::string folder;
    std::size_t threads;
    std::map<int, std::string> descriptors;  // open descriptors and their targets, without sealed copies of a library
    mode_t file_mode;
};

[[nodiscard]] ProcessState process_state();

/// What changed, as the predicate of a sentence: "changed the locale from C to de"; nothing if nothing changed.
[[nodiscard]] std::optional<std::string> difference(const ProcessState& before, const ProcessState& after,
                                                    KeptState what);

}  // namespace flutebook::sandbox
