#include "host/engine/library.hpp"

#include <boost/dll/shared_library.hpp>
#include <filesystem>
#include <memory>
#include <mutex>
#include <vector>

#include "host/engine/floating_point.hpp"
#include "host/errors.hpp"

namespace flutebook::engine {
namespace {

// Never closed: code of a plugin may be running, or its strings be shown, until the very end. The vector itself is
// never freed either, so that no destructor closes what it holds.
void keep_for_ever(std::unique_ptr<boost::dll::shared_library> library) {
    static std::mutex mutex;
    static auto* kept = new std::vector<std::unique_ptr<boost::dll::shared_library>>();
    const std::lock_guard lock(mutex);
    kept->push_back(std::move(library));
}

// The library's own text ends in a code that misleads ("Bad file descriptor"); what the loader said stands before.
std::string loader_text(const std::exception& error) {
    std::string text = error.what();
    const auto code = text.find(": Bad file descriptor");
    return code == std::string::npos ? text : text.substr(0, code);
}

}  // namespace

const flutebook_model& open_plugin(const std::string& file) {
    // A relative path without a folder would be searched for elsewhere.
    const auto path = std::filesystem::absolute(file);
    const std::string where = file + ": model " + path.stem().string();
    if (!std::filesystem::is_regular_file(path))
        throw ModelError(where + ": no such plugin file; build it, or take the model off plugins.yaml");
    const FloatingPointGuard guard;
    auto library = std::make_unique<boost::dll::shared_library>();
    try {
        library->load(path, boost::dll::load_mode::rtld_now | boost::dll::load_mode::rtld_local);
    } catch (const std::exception& error) {
        throw ModelError(where + ": cannot be loaded as a plugin: " + loader_text(error) +
                         "; build it as a shared library for this machine, with all it calls linked in");
    }
    const bool exports = library->has("flutebook_plugin");
    const flutebook_model* model = exports ? &library->get<const flutebook_model>("flutebook_plugin") : nullptr;
    keep_for_ever(std::move(library));
    if (const auto change = guard.change())
        throw ModelError(where + ": loading it changed how the whole program computes: " + *change +
                         "; link it without fast arithmetic");
    if (!exports)
        throw ModelError(where + ": exports no symbol flutebook_plugin; end the source with FLUTEBOOK_MODEL(...)");
    return *model;
}

}  // namespace flutebook::engine
