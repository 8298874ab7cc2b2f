#include "host/desk/describe.hpp"

#include <algorithm>

#include "host/engine/description.hpp"
#include "host/engine/facts.hpp"
#include "host/engine/library.hpp"
#include "host/trial/child.hpp"
#include "host/trial/records.hpp"
#include "host/trial/tried_trust.hpp"

namespace flutebook::desk {

namespace {

bool is_fact(const std::string& name) {
    const auto& facts = engine::facts();
    return std::any_of(facts.begin(), facts.end(), [&](const engine::Fact& fact) { return fact.name.name == name; });
}

}  // namespace

bool Description::replaces_fact(const engine::Name& provided) const {
    return is_fact(provided.name);
}

bool Description::replaces(const engine::Name& name) const {
    const auto is_named = [&](const engine::Name& own) { return own.name == name.name; };
    return std::any_of(model.needs.begin(), model.needs.end(), is_named) &&
           std::any_of(model.provides.begin(), model.provides.end(), is_named);
}

Description describe(const std::string& file) {
    const engine::PluginFile read = engine::PluginFile::read(file);
    // Describing runs none of a model's code, but loading runs what was linked into the file.
    trial::TriedTrust(trial::own_program(), trial::Records(trial::records_folder())).check(read);
    Description made{engine::describe(engine::load_plugin(read), read.name(), read.id()), {}};
    for (const engine::Name& need : made.model.needs) made.need_is_fact.push_back(is_fact(need.name));
    return made;
}

}  // namespace flutebook::desk
