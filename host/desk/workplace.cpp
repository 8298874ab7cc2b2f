#include "host/desk/workplace.hpp"

#include <filesystem>

namespace flutebook::desk {

std::string installed_plugins() {
    const auto program = std::filesystem::read_symlink("/proc/self/exe");
    return (program.parent_path().parent_path() / "lib" / "flutebook" / "plugins").string();
}

Workplace open(const std::string& folder) {
    catalogue::Plant plant = catalogue::read_plant(folder);
    engine::Engine engine = engine::Engine::start(plant, installed_plugins());
    return {std::move(plant), std::move(engine)};
}

}  // namespace flutebook::desk
