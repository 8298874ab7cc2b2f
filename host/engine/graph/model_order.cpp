#include "host/engine/graph/model_order.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <string>

#include "host/base/errors.hpp"

namespace flutebook::engine {
namespace {

class Ordering {
public:
    explicit Ordering(const Graph& graph) : graph_(graph) {}

    // Kahn's order; of the models that are ready the first id goes first. Late models wait for all others.
    ModelOrder order() const {
        const std::size_t count = graph_.models.size();
        std::vector<std::set<std::size_t>> feeders = feeders_by_model();
        const std::vector<char> is_late = late_models(feeders);
        refuse_late_run(is_late);
        ModelOrder result{{}, static_cast<std::size_t>(std::count(is_late.begin(), is_late.end(), 0))};
        for (std::size_t m = 0; m < count; ++m)
            for (std::size_t other = 0; other < count; ++other)
                if (is_late[m] != 0 && is_late[other] == 0) feeders[m].insert(other);
        std::vector<char> placed(count, 0);
        while (result.models.size() < count) {
            std::size_t next = 0;
            const auto waits = [&](std::size_t m) {
                return placed[m] != 0 ||
                       std::any_of(feeders[m].begin(), feeders[m].end(), [&](std::size_t f) { return placed[f] == 0; });
            };
            while (next < count && waits(next)) ++next;
            if (next == count) throw ModelError(circle(feeders, placed));
            placed[next] = 1;
            result.models.push_back(next);
        }
        return result;
    }

private:
    // The models that each model takes a number from.
    std::vector<std::set<std::size_t>> feeders_by_model() const {
        std::vector<std::set<std::size_t>> feeders(graph_.models.size());
        for (std::size_t m = 0; m < graph_.models.size(); ++m) {
            for (const Link& need : graph_.needs[m])
                if (need.source.kind == Source::Kind::provided)
                    feeders[m].insert(need.source.model);
                else if (need.source.kind == Source::Kind::setting)
                    add_deciders(feeders[m], need.source);
            for (const auto& setting : graph_.settings[m])
                if (setting) feeders[m].insert(setting->source.model);
        }
        return feeders;
    }

    // Who must have run before a setting has its value: whoever gives the need that it is stepped over, and the choice
    // that it is keyed by. The setting's own model asks for both anyway; one that replaces the setting may run before
    // it.
    void add_deciders(std::set<std::size_t>& feeders, const Source& setting) const {
        const contract::Setting& declared = graph_.models[setting.model].settings[setting.index];
        const auto add = [&](const Source& source) {
            if (source.kind == Source::Kind::provided) feeders.insert(source.model);
        };
        if (declared.stepped_over) add(graph_.needs[setting.model][*declared.stepped_over].source);
        if (!declared.keyed_by) return;
        if (const auto& replaced = graph_.settings[setting.model][*declared.keyed_by])
            add(replaced->source);
        else
            add_deciders(feeders, {Source::Kind::setting, setting.model, *declared.keyed_by});
    }

    // Which models need what others charge, themselves or through another model.
    std::vector<char> late_models(const std::vector<std::set<std::size_t>>& feeders) const {
        std::vector<char> is_late;
        for (const contract::Model& model : graph_.models) is_late.push_back(model.needs_cost() ? 1 : 0);
        for (std::size_t round = 0; round < graph_.models.size(); ++round)
            for (std::size_t m = 0; m < graph_.models.size(); ++m)
                for (const std::size_t feeder : feeders[m])
                    if (is_late[feeder] != 0) is_late[m] = 1;
        return is_late;
    }

    // A run that stood on the cost of its own paper would have none.
    void refuse_late_run(const std::vector<char>& is_late) const {
        if (is_late[graph_.shedder] != 0)
            throw ModelError(
                fmt::format("{}: circle: it lays out the run, and needs, itself or through another model, what others "
                            "charge for the run; take the names cost.* out",
                            graph_.models[graph_.shedder].where()));
    }

    // Follows feeders among the models that wait until one comes up again: "a needs x of b, b needs y of a".
    std::string circle(const std::vector<std::set<std::size_t>>& feeders, const std::vector<char>& placed) const {
        std::vector<std::size_t> path;
        std::size_t at = static_cast<std::size_t>(std::find(placed.begin(), placed.end(), 0) - placed.begin());
        while (std::find(path.begin(), path.end(), at) == path.end()) {
            path.push_back(at);
            at = *std::find_if(feeders[at].begin(), feeders[at].end(), [&](std::size_t f) { return placed[f] == 0; });
        }
        path.erase(path.begin(), std::find(path.begin(), path.end(), at));
        std::vector<std::string> joints;
        for (std::size_t i = 0; i < path.size(); ++i) joints.push_back(joint(path[i], path[(i + 1) % path.size()]));
        return fmt::format("circle: {}; remove one of these needs", fmt::join(joints, ", "));
    }

    std::string joint(std::size_t taker, std::size_t feeder) const {
        for (std::size_t n = 0; n < graph_.needs[taker].size(); ++n)
            if (graph_.needs[taker][n].source.kind == Source::Kind::provided &&
                graph_.needs[taker][n].source.model == feeder)
                return fmt::format("{} needs {} of {}", graph_.models[taker].where(),
                                   graph_.models[taker].needs[n].name, graph_.models[feeder].id);
        for (std::size_t s = 0; s < graph_.settings[taker].size(); ++s)
            if (graph_.settings[taker][s] && graph_.settings[taker][s]->source.model == feeder)
                return fmt::format("{} takes its setting {} from {}", graph_.models[taker].where(),
                                   graph_.models[taker].settings[s].name, graph_.models[feeder].id);
        for (std::size_t n = 0; n < graph_.needs[taker].size(); ++n)
            if (graph_.needs[taker][n].source.kind == Source::Kind::setting)
                return fmt::format("{} needs {}, whose value {} decides", graph_.models[taker].where(),
                                   graph_.models[taker].needs[n].name, graph_.models[feeder].id);
        return {};
    }

    const Graph& graph_;
};

}  // namespace

ModelOrder order_models(const Graph& graph) {
    return Ordering(graph).order();
}

}  // namespace flutebook::engine
