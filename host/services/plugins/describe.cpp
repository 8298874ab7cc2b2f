#include "host/services/plugins/describe.hpp"

#include "host/contract/description.hpp"
#include "host/contract/library.hpp"
#include "host/plugin_check/records.hpp"
#include "host/plugin_check/tried_trust.hpp"
#include "host/sandbox/child.hpp"

namespace flutebook::services {

answers::DescribedModel describe(const std::string& file) {
    const contract::PluginFile read = contract::PluginFile::read(file);
    // Describing runs none of a model's code, but loading runs what was linked into the file.
    plugin_check::TriedTrust(sandbox::own_program(), plugin_check::Records(plugin_check::records_folder())).check(read);
    answers::DescribedModel result{contract::describe(contract::load_plugin(read), read.name(), read.id()), {}};
    for (const contract::Name& need : result.model.needs) result.need_is_fact.push_back(result.replaces_fact(need));
    return result;
}

}  // namespace flutebook::services
