// State of the whole process, recorded before and after code under test runs, to see what it changed. Nothing is opened
// to record it.
#pragma once

#include <sys/types.h>

#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace flutebook::sandbox {

/// The parts of the state that code under test must not change.
enum class KeptState { signals, locale, environment, folder, threads, descriptors, file_mode, limits, timers };

struct ProcessState {
    std::map<int, const void*> handlers;  // by signal
    std::vector<int> blocked;             // signals, on this thread
    std::string locale;
    std::vector<std::string> environment;
    std::string folder;
    std::size_t threads;
    std::map<int, std::string> descriptors;  // open descriptors and their targets, without sealed copies of a library
    mode_t file_mode;
    std::vector<std::uint64_t> limits;  // of resources, the soft and the hard one of each
    std::size_t timers;                 // that run
};

[[nodiscard]] ProcessState process_state();

/// What changed, as the predicate of a sentence: "changed the locale from C to de"; nothing if nothing changed.
[[nodiscard]] std::optional<std::string> difference(const ProcessState& before, const ProcessState& after,
                                                    KeptState what);

/// The first change of any part.
[[nodiscard]] std::optional<std::string> first_difference(const ProcessState& before, const ProcessState& after);

}  // namespace flutebook::sandbox
