#include "host/sandbox/process_state.hpp"

#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <clocale>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <set>
#include <system_error>

#include "host/sandbox/child.hpp"

namespace flutebook::sandbox {
namespace {

namespace fs = std::filesystem;

std::map<int, const void*> handlers() {
    std::map<int, const void*> result;
    for (int signal = 1; signal < NSIG; ++signal) {
        struct sigaction how {};
        if (::sigaction(signal, nullptr, &how) == 0) result[signal] = reinterpret_cast<const void*>(how.sa_handler);
    }
    return result;
}

std::vector<std::string> environment() {
    std::vector<std::string> result;
    for (char** one = ::environ; one != nullptr && *one != nullptr; ++one) result.emplace_back(*one);
    std::sort(result.begin(), result.end());
    return result;
}

std::size_t threads() {
    std::error_code failed;
    return static_cast<std::size_t>(
        std::distance(fs::directory_iterator("/proc/self/task", failed), fs::directory_iterator()));
}

std::map<int, std::string> descriptors() {
    std::map<int, std::string> result;
    std::error_code failed;
    for (const auto& entry : fs::directory_iterator("/proc/self/fd", failed)) {
        const std::string leads_to = fs::read_symlink(entry.path(), failed).string();
        // Left out: the descriptor of this listing, and the sealed copy that the host opened to load the library.
        if (failed || leads_to.find("/fd") != std::string::npos || leads_to.rfind("/memfd:plugin", 0) == 0) continue;
        result[std::atoi(entry.path().filename().c_str())] = leads_to;
    }
    return result;
}

mode_t file_mode() {
    const mode_t now = ::umask(0);
    ::umask(now);
    return now;
}

// The name of a changed variable. Its value may be a secret and is not shown.
std::string changed_variable(const std::vector<std::string>& before, const std::vector<std::string>& after) {
    std::set<std::string> changed;
    std::set_symmetric_difference(before.begin(), before.end(), after.begin(), after.end(),
                                  std::inserter(changed, changed.end()));
    return changed.empty() ? "" : changed.begin()->substr(0, changed.begin()->find('='));
}

std::optional<std::string> changed_handler(const ProcessState& before, const ProcessState& after) {
    for (const auto& [signal, handler] : after.handlers)
        if (before.handlers.at(signal) != handler)
            return fmt::format("changed what happens at the signal {}", signal_name(signal));
    return std::nullopt;
}

std::optional<std::string> changed_descriptor(const ProcessState& before, const ProcessState& after) {
    for (const auto& [number, leads_to] : after.descriptors)
        if (const auto found = before.descriptors.find(number);
            found == before.descriptors.end() || found->second != leads_to)
            return fmt::format("opened {} and left it open", leads_to);
    for (const auto& [number, led_to] : before.descriptors)
        if (after.descriptors.count(number) == 0) return fmt::format("closed {}, which it had not opened", led_to);
    return std::nullopt;
}

}  // namespace

ProcessState process_state() {
    std::error_code failed;
    return {handlers(),    std::setlocale(LC_ALL, nullptr),
            environment(), fs::current_path(failed).string(),
            threads(),     descriptors(),
            file_mode()};
}

std::optional<std::string> difference(const ProcessState& before, const ProcessState& after, KeptState what) {
    switch (what) {
        case KeptState::signals:
            return changed_handler(before, after);
        case KeptState::locale:
            if (before.locale == after.locale) return std::nullopt;
            return fmt::format("changed the locale from {} to {}", before.locale, after.locale);
        case KeptState::environment:
            if (before.environment == after.environment) return std::nullopt;
            return fmt::format("changed the variable {} of the environment",
                               changed_variable(before.environment, after.environment));
        case KeptState::folder:
            if (before.folder == after.folder) return std::nullopt;
            return fmt::format("changed the working folder to {}", after.folder);
        case KeptState::threads:
            if (before.threads == after.threads) return std::nullopt;
            return "started a thread that goes on";
        case KeptState::descriptors:
            return changed_descriptor(before, after);
        case KeptState::file_mode:
            if (before.file_mode == after.file_mode) return std::nullopt;
            return fmt::format("changed the rights of new files from {:04o} to {:04o} (umask)", before.file_mode,
                               after.file_mode);
    }
    return std::nullopt;
}

}  // namespace flutebook::sandbox
