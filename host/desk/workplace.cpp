#include "host/desk/workplace.hpp"

#include <filesystem>

#include "host/trial/child.hpp"
#include "host/trial/records.hpp"
#include "host/trial/tried_trust.hpp"

namespace flutebook::desk {

std::string installed_plugins() {
    const auto program = std::filesystem::read_symlink("/proc/self/exe");
    return (program.parent_path().parent_path() / "lib" / "flutebook" / "plugins").string();
}

Workplace open(const std::string& folder) {
    return open(catalogue::read_plant(folder));
}

Workplace open(catalogue::Plant plant) {
    trial::TriedTrust trust(trial::own_program(), trial::Records(trial::records_folder()));
    engine::Engine engine = engine::Engine::start(plant, installed_plugins(), &trust);
    return {std::move(plant), std::move(engine)};
}

}  // namespace flutebook::desk
