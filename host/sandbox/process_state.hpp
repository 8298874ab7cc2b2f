// What belongs to the whole process and not to any library in it: looked at before and after a library is loaded.
#pragma once

#include <sys/types.h>

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace flutebook::sandbox {

/// What a library that is loaded must leave as it was.
enum class KeptState { signals, locale, environment, folder, threads, descriptors, file_mode };

struct ProcessState {
    std::map<int, const void*> handlers;  // by signal
    std::string locale;
    std::vector<std::string> environment;
    std::string folder;
    std::size_t threads;
    std::map<int, std::string>
        descriptors;  // open ones, and what each leads to; sealed copies of a library are left out
    mode_t file_mode;
};

[[nodiscard]] ProcessState process_state();

/// What is different, as a sentence goes on after its subject: "changed the locale from C to de".
[[nodiscard]] std::optional<std::string> difference(const ProcessState& before, const ProcessState& after,
                                                    KeptState what);

}  // namespace flutebook::sandbox
