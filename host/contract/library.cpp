#include "host/contract/library.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <boost/dll/shared_library.hpp>
#include <cerrno>
#include <map>
#include <memory>
#include <mutex>
#include <system_error>
#include <vector>

#include "host/base/errors.hpp"
#include "host/contract/floating_point.hpp"
#include "host/contract/running_model.hpp"

namespace flutebook::contract {
namespace {

// Libraries are never closed: code of a plugin may be running, or its strings be shown, until the very end. Their
// descriptors stay open as well: the loader knows a library by its path, and the number of a closed descriptor would
// come again for another file. Nothing here is ever freed, so that no destructor closes what it holds.
struct LoadedLibrary {
    std::vector<std::unique_ptr<boost::dll::shared_library>> libraries;
    std::map<std::string, Library> by_sha256;
};

LoadedLibrary& kept() {
    static auto* all = new LoadedLibrary();
    return *all;
}

std::mutex& kept_mutex() {
    static std::mutex mutex;
    return mutex;
}

// What the system's loader said. The library wraps it in words of its own, the path, and a code that misleads ("Bad
// file descriptor").
std::string loader_text(const std::exception& error, const std::string& path) {
    const std::string text = error.what();
    const std::string mark = "(dlerror system message: ";
    const auto begin = text.find(mark);
    const auto end = text.rfind("): ");
    if (begin == std::string::npos || end == std::string::npos || end < begin + mark.size()) return text;
    const std::string said = text.substr(begin + mark.size(), end - begin - mark.size());
    const std::string of_path = path + ": ";
    return said.starts_with(of_path) ? said.substr(of_path.size()) : said;
}

}  // namespace

Library load_library(const PluginFile& file) {
    const std::lock_guard lock(kept_mutex());
    if (const auto found = kept().by_sha256.find(file.sha256()); found != kept().by_sha256.end()) return found->second;
    const int item = ::fcntl(file.descriptor(), F_DUPFD_CLOEXEC, 0);
    if (item < 0)
        throw ModelError(fmt::format("{}: cannot be loaded: {}; let the program open more files at once", file.where(),
                                     std::generic_category().message(errno)));
    const std::string path = fmt::format("/proc/self/fd/{}", item);
    auto opened = std::make_unique<boost::dll::shared_library>();
    const FloatingPointGuard guard;
    const std::string id = file.id();
    const RunningModel running(file.name().c_str(), id.c_str(), "it was loaded");
    try {
        opened->load(path, boost::dll::load_mode::rtld_now | boost::dll::load_mode::rtld_local);
    } catch (const std::exception& error) {
        ::close(item);
        throw ModelError(file.where() + ": cannot be loaded as a plugin: " + loader_text(error, path) +
                         "; build it as a shared library for this machine, with all it calls linked in");
    }
    const bool exports = opened->has("flutebook_plugin");
    Library result{exports ? &opened->get<const flutebook_model>("flutebook_plugin") : nullptr, guard.change()};
    kept().libraries.push_back(std::move(opened));
    if (!file.sha256().empty()) kept().by_sha256.emplace(file.sha256(), result);
    return result;
}

const flutebook_model& load_plugin(const PluginFile& file) {
    const Library library = load_library(file);
    if (library.computes_apart)
        throw ModelError(file.where() + ": loading it changed how the whole program computes: " +
                         *library.computes_apart + "; link it without fast arithmetic");
    if (library.model == nullptr)
        throw ModelError(file.where() +
                         ": exports no symbol flutebook_plugin; end the source with FLUTEBOOK_MODEL(...)");
    return *library.model;
}

}  // namespace flutebook::contract
