#include "host/plant_answers/plugin_answer.hpp"

#include <algorithm>

#include "host/engine/facts.hpp"

namespace flutebook::plant_answers {

using engine::Graph;
using engine::Link;
using engine::Source;

namespace {

bool is_fact_of_host(const std::string& name) {
    const auto& facts = engine::facts();
    return std::any_of(facts.begin(), facts.end(), [&](const engine::Fact& fact) { return fact.name.name == name; });
}

}  // namespace

Feed feed_of(const Graph& graph, const Source& source) {
    if (source.kind == Source::Kind::fact) {
        const contract::Name& name = engine::facts()[source.index].name;
        return {Feed::Kind::fact, "", name.name, name.unit};
    }
    const contract::Model& model = graph.models[source.model];
    if (source.kind == Source::Kind::setting) {
        const contract::Setting& setting = model.settings[source.index];
        return {Feed::Kind::setting, model.id, setting.name, setting.unit};
    }
    const contract::Name& name = model.provides[source.index];
    return {Feed::Kind::model, model.id, name.name, name.unit};
}

std::vector<std::string> takers_of(const Graph& graph, std::size_t model, std::size_t provide) {
    const Source source{Source::Kind::provided, model, provide};
    const auto takes = [&](const Link& link) { return link.source == source; };
    std::vector<std::string> result;
    for (std::size_t m = 0; m < graph.models.size(); ++m) {
        const auto& needs = graph.needs[m];
        const auto& settings = graph.settings[m];
        if (std::any_of(needs.begin(), needs.end(), takes) ||
            std::any_of(settings.begin(), settings.end(), [&](const auto& link) { return link && takes(*link); }))
            result.push_back(graph.models[m].id);
    }
    const engine::HostLinks& host = graph.host;
    for (const Link* link : {&host.fed, &host.good, &host.web_length, &host.web_area, &host.issued, &host.adhesive})
        if (takes(*link)) {
            result.push_back("host");
            break;
        }
    return result;
}

bool DescribedModel::replaces_fact(const contract::Name& provided) const {
    return is_fact_of_host(provided.name);
}

bool DescribedModel::replaces(const contract::Name& name) const {
    const auto is_named = [&](const contract::Name& item) { return item.name == name.name; };
    return std::any_of(model.needs.begin(), model.needs.end(), is_named) &&
           std::any_of(model.provides.begin(), model.provides.end(), is_named);
}

std::size_t Checked::count(State state) const {
    return static_cast<std::size_t>(
        std::count_if(rules.begin(), rules.end(), [&](const CheckedRule& rule) { return rule.state == state; }));
}

}  // namespace flutebook::plant_answers
