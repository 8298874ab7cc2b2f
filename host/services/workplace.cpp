#include "host/services/workplace.hpp"

#include <filesystem>

#include "host/contract/running_model.hpp"
#include "host/installed_set/installed_set.hpp"
#include "host/plugin_check/tried_trust.hpp"
#include "host/plugin_worker/isolation.hpp"
#include "host/sandbox/child.hpp"

namespace flutebook::services {

std::string installed_plugins() {
    const auto program = std::filesystem::read_symlink("/proc/self/exe");
    return (program.parent_path().parent_path() / "lib" / "flutebook" / "plugins").string();
}

Workplace open(const std::string& folder) {
    return open(plant::read_plant(folder));
}

Workplace open(plant::Plant plant) {
    contract::name_models_at_fatal_signals();
    plugin_check::TriedTrust trust(sandbox::own_program(), plugin_check::Records(plugin_check::records_folder()),
                                   installed_set::installed_models());
    plugin_worker::ProcessLoader isolation(sandbox::own_program());
    engine::Engine engine = engine::Engine::start(plant, installed_plugins(), &trust, &isolation);
    return {std::move(plant), std::move(engine)};
}

}  // namespace flutebook::services
