#include "host/cli/person.hpp"

#include <pwd.h>
#include <unistd.h>

namespace flutebook::cli {

// Asked once a run, before any thread is started.
std::string person_at_work() {
    const auto number = geteuid();
    const auto* entry = getpwuid(number);
    if (entry == nullptr || entry->pw_name == nullptr || *entry->pw_name == '\0') return std::to_string(number);
    return entry->pw_name;
}

}  // namespace flutebook::cli
