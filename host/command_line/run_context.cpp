#include "host/command_line/run_context.hpp"

#include <pwd.h>
#include <unistd.h>

#include <chrono>

#include "host/base/characters.hpp"

namespace flutebook::cli {

// Called once a run, before any thread is started: the answer of getpwuid is shared by all threads.
std::string RunContext::person() const {
    const auto number = geteuid();
    const auto* entry = getpwuid(number);
    if (entry == nullptr || entry->pw_name == nullptr || *entry->pw_name == '\0') return std::to_string(number);
    return base::is_plain_line(entry->pw_name) ? entry->pw_name : std::to_string(number);
}

base::Date RunContext::today() {
    return std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now());
}

}  // namespace flutebook::cli
