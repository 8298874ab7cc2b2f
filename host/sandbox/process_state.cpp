#include "host/sandbox/process_state.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/time.h>
#include <unistd.h>

#include <algorithm>
#include <clocale>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <set>
#include <system_error>

#include "host/sandbox/child.hpp"
#include "host/sandbox/confine.hpp"

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

std::vector<int> blocked_signals() {
    sigset_t all;
    ::pthread_sigmask(SIG_BLOCK, nullptr, &all);
    std::vector<int> result;
    for (int signal = 1; signal < NSIG; ++signal)
        if (sigismember(&all, signal) == 1) result.push_back(signal);
    return result;
}

// A folder counts a link for each folder in it, besides two of its own.
std::size_t threads() {
    struct stat about {};
    return ::stat("/proc/self/task", &about) == 0 && about.st_nlink > 2 ? about.st_nlink - 2 : 1;
}

std::map<int, std::string> descriptors() {
    std::map<int, std::string> result;
    for (int number = 0; number < most_descriptors; ++number) {
        if (::fcntl(number, F_GETFD) < 0) continue;
        std::error_code failed;
        const std::string leads_to = fs::read_symlink("/proc/self/fd/" + std::to_string(number), failed).string();
        // Left out: the sealed copy that the host opened to load the library.
        if (leads_to.rfind("/memfd:plugin", 0) != 0) result[number] = leads_to;
    }
    return result;
}

std::vector<std::uint64_t> resource_limits() {
    std::vector<std::uint64_t> result;
    for (int what = 0; what < RLIM_NLIMITS; ++what) {
        rlimit both{};
        ::getrlimit(static_cast<__rlimit_resource_t>(what), &both);
        result.push_back(both.rlim_cur);
        result.push_back(both.rlim_max);
    }
    return result;
}

std::size_t running_timers() {
    std::size_t result = 0;
    for (const auto which : {ITIMER_REAL, ITIMER_VIRTUAL, ITIMER_PROF}) {
        itimerval now{};
        const bool runs = ::getitimer(which, &now) == 0 && (now.it_value.tv_sec != 0 || now.it_value.tv_usec != 0);
        result += runs ? 1 : 0;
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
    if (before.blocked != after.blocked) return "changed which signals are blocked";
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
    return {handlers(),
            blocked_signals(),
            std::setlocale(LC_ALL, nullptr),
            environment(),
            fs::current_path(failed).string(),
            threads(),
            descriptors(),
            file_mode(),
            resource_limits(),
            running_timers()};
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
        case KeptState::limits:
            if (before.limits == after.limits) return std::nullopt;
            return "changed a limit of the process";
        case KeptState::timers:
            if (before.timers == after.timers) return std::nullopt;
            return "set a timer";
    }
    return std::nullopt;
}

std::optional<std::string> first_difference(const ProcessState& before, const ProcessState& after) {
    for (const KeptState what :
         {KeptState::signals, KeptState::locale, KeptState::environment, KeptState::folder, KeptState::threads,
          KeptState::descriptors, KeptState::file_mode, KeptState::limits, KeptState::timers})
        if (auto found = difference(before, after, what)) return found;
    return std::nullopt;
}

}  // namespace flutebook::sandbox
