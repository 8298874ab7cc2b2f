// By Landlock, which the C library has no functions for.
#include "host/sandbox/readable_folders.hpp"

#include <fcntl.h>
#include <link.h>
#include <linux/landlock.h>
#include <sys/prctl.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <unistd.h>

#include <cstdint>
#include <set>
#include <string>

#include "host/sandbox/build.hpp"

namespace flutebook::sandbox {
namespace {

// Everything that the first version of Landlock knows.
constexpr std::uint64_t all_access = (std::uint64_t{LANDLOCK_ACCESS_FS_MAKE_SYM} << 1U) - 1;
constexpr std::uint64_t reading_a_file = LANDLOCK_ACCESS_FS_EXECUTE | LANDLOCK_ACCESS_FS_READ_FILE;

int add_folder_of(dl_phdr_info* library, std::size_t, void* folders) {
    const std::string path = library->dlpi_name;
    const auto slash = path.rfind('/');
    if (slash != std::string::npos && slash > 0)
        static_cast<std::set<std::string>*>(folders)->insert(path.substr(0, slash));
    return 0;
}

void allow(int ruleset, const std::string& path) {
    const int place = ::open(path.c_str(), O_PATH | O_CLOEXEC);
    if (place < 0) return;
    struct stat about {};
    const bool is_folder = ::fstat(place, &about) == 0 && S_ISDIR(about.st_mode);
    const landlock_path_beneath_attr rule{is_folder ? reading_a_file | LANDLOCK_ACCESS_FS_READ_DIR : reading_a_file,
                                          place};
    ::syscall(SYS_landlock_add_rule, ruleset, LANDLOCK_RULE_PATH_BENEATH, &rule, 0);
    ::close(place);
}

}  // namespace

void allow_folders_of_libraries() {
    const landlock_ruleset_attr attributes{all_access};
    const int ruleset =
        static_cast<int>(::syscall(SYS_landlock_create_ruleset, &attributes, sizeof attributes.handled_access_fs, 0));
    if (ruleset < 0) return;
    std::set<std::string> places = {"/lib", "/lib64", "/usr/lib", "/usr/lib64", "/usr/local/lib", "/etc/ld.so.cache"};
    ::dl_iterate_phdr(add_folder_of, &places);
    // AddressSanitizer looks up the thread's stack there when a signal handler jumps back.
    if (has_address_sanitizer) places.insert("/proc/self/maps");
    for (const std::string& place : places) allow(ruleset, place);
    if (::prctl(PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0) == 0) ::syscall(SYS_landlock_restrict_self, ruleset, 0);
    ::close(ruleset);
}

}  // namespace flutebook::sandbox
