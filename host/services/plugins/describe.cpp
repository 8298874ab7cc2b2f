#include "host/services/plugins/describe.hpp"

#include <algorithm>

#include "host/contract/description.hpp"
#include "host/contract/library.hpp"
#include "host/engine/facts.hpp"
#include "host/plugin_check/records.hpp"
#include "host/plugin_check/tried_trust.hpp"
#include "host/sandbox/child.hpp"

namespace flutebook::services {

namespace {

bool is_fact(const std::string& name) {
    const auto& facts = engine::facts();
    return std::any_of(facts.begin(), facts.end(), [&](const engine::Fact& fact) { return fact.name.name == name; });
}

}  // namespace

bool DescribedModel::replaces_fact(const contract::Name& provided) const {
    return is_fact(provided.name);
}

bool DescribedModel::replaces(const contract::Name& name) const {
    const auto is_named = [&](const contract::Name& item) { return item.name == name.name; };
    return std::any_of(model.needs.begin(), model.needs.end(), is_named) &&
           std::any_of(model.provides.begin(), model.provides.end(), is_named);
}

DescribedModel describe(const std::string& file) {
    const contract::PluginFile read = contract::PluginFile::read(file);
    // Describing runs none of a model's code, but loading runs what was linked into the file.
    plugin_check::TriedTrust(sandbox::own_program(), plugin_check::Records(plugin_check::records_folder())).check(read);
    DescribedModel result{contract::describe(contract::load_plugin(read), read.name(), read.id()), {}};
    for (const contract::Name& need : result.model.needs) result.need_is_fact.push_back(is_fact(need.name));
    return result;
}

}  // namespace flutebook::services
