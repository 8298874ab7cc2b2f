#include "host/engine/graph/graph.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "host/base/errors.hpp"
#include "host/base/near_spellings.hpp"
#include "host/engine/facts.hpp"
#include "host/engine/graph/model_order.hpp"

namespace flutebook::engine {
namespace {

struct NamePlace {
    std::size_t model, index;
};

class Joiner {
public:
    Joiner(std::vector<contract::Model> models, const std::vector<plant::Preference>& preferences)
        : preferences_(preferences) {
        std::sort(models.begin(), models.end(),
                  [](const contract::Model& left, const contract::Model& right) { return left.id < right.id; });
        graph_.models = std::move(models);
        index_names();
    }

    Graph join() {
        take_preferences();
        refuse_double_providers();
        refuse_names_of_host();
        link_needs();
        link_settings();
        link_host();
        if (errors_.empty()) find_shedder();
        if (!errors_.empty()) throw ModelError(std::move(errors_));
        renumber(order_models(graph_));
        return std::move(graph_);
    }

private:
    const std::vector<contract::Model>& models() const { return graph_.models; }

    void index_names() {
        for (std::size_t f = 0; f < facts().size(); ++f) facts_[facts()[f].name.name] = f;
        for (std::size_t m = 0; m < models().size(); ++m) {
            for (std::size_t p = 0; p < models()[m].provides.size(); ++p)
                providers_[models()[m].provides[p].name].push_back({m, p});
            for (std::size_t s = 0; s < models()[m].settings.size(); ++s)
                settings_[models()[m].id + "." + models()[m].settings[s].name] = {m, s};
        }
    }

    // Which of a model's provides has this name; nothing where none has.
    std::optional<std::size_t> provide_of(std::size_t model, const std::string& name) const {
        const auto& provided = models()[model].provides;
        for (std::size_t p = 0; p < provided.size(); ++p)
            if (provided[p].name == name) return p;
        return std::nullopt;
    }

    // The number of a model that a preference took: it was seen to be there.
    Source preferred_source(std::size_t model, const std::string& name) const {
        return {Source::Kind::provided, model, provide_of(model, name).value_or(0)};
    }

    // What a preferred model takes the place of: a fact, a setting, or another model's name. Nothing: an error said.
    void take_preferences() {
        for (const plant::Preference& preference : preferences_) {
            const std::string where = fmt::format("{}:{}:{}: prefer.{}", preference.place.file.text(),
                                                  preference.place.line, preference.place.column, preference.name);
            const auto model = contract::find_model(models(), preference.model);
            if (!model) {
                errors_.push_back(fmt::format("{}: no such model is loaded: {}; {}", where, preference.model,
                                              advice(preference.model, ids())));
                continue;
            }
            if (!provide_of(*model, preference.name)) {
                errors_.push_back(
                    fmt::format("{}: {} does not provide it; prefer a model that does", where, preference.model));
                continue;
            }
            if (const auto why = why_not_replaceable(preference.name, *model)) {
                errors_.push_back(fmt::format("{}: {}", where, *why));
                continue;
            }
            preferred_[preference.name] = *model;
        }
    }

    std::optional<std::string> why_not_replaceable(const std::string& name, std::size_t by) const {
        if (const auto fact = facts_.find(name); fact != facts_.end()) {
            if (facts()[fact->second].is_replaceable) return std::nullopt;
            return name + " is a fact that no model may replace: the layout and the balance depend on it";
        }
        if (const auto setting = settings_.find(name); setting != settings_.end())
            return setting->second.model == by
                       ? std::optional(name + " is the model's own setting; let the model use it directly")
                       : std::nullopt;
        if (providers_.at(name).size() > 1) return std::nullopt;
        return "replaces nothing: no fact, setting or other model gives it; take the line out";
    }

    void refuse_double_providers() {
        for (const auto& [name, places] : providers_) {
            const bool preferred = preferred_.count(name) != 0;
            const bool is_fact = facts_.count(name) != 0;
            const bool is_setting = settings_.count(name) != 0;
            const std::size_t givers = places.size() + (is_fact ? 1 : 0) + (is_setting ? 1 : 0);
            if (givers == 1 || (givers == 2 && preferred)) continue;
            std::vector<std::string> who;
            if (is_fact) who.push_back("the host");
            if (is_setting) who.push_back("a setting of " + models()[settings_.at(name).model].where());
            for (const NamePlace& place : places) who.push_back(models()[place.model].where());
            errors_.push_back(
                fmt::format("{}: given twice: by {}; say which in plugins.yaml, prefer: {{{}: …}}, or load one of them",
                            name, fmt::join(who, " and by "), name));
        }
    }

    // The first word of a fact is reserved for the host. The names `web.` that the run provides are an exception.
    void refuse_names_of_host() {
        for (std::size_t m = 0; m < models().size(); ++m)
            for (const contract::Name& provide : models()[m].provides) {
                const bool is_run = provide_of(m, "run.good").has_value() &&
                                    (provide.name == "web.length" || provide.name == "web.area");
                if (!contract::is_name_of_host(provide.name) || facts_.contains(provide.name) || is_run) continue;
                errors_.push_back(
                    fmt::format("{}: a name reserved for the host: provides {}; begin it with another word",
                                models()[m].where(), provide.name));
            }
    }

    std::optional<Source> source_for(std::size_t taker, const std::string& name) const {
        const auto preference = preferred_.find(name);
        const bool replaces_it = preference != preferred_.end() && preference->second == taker;
        if (preference != preferred_.end() && !replaces_it) return preferred_source(preference->second, name);
        if (const auto fact = facts_.find(name); fact != facts_.end())
            return Source{Source::Kind::fact, 0, fact->second};
        if (const auto setting = settings_.find(name); setting != settings_.end() && replaces_it)
            return Source{Source::Kind::setting, setting->second.model, setting->second.index};
        if (const auto found = providers_.find(name); found != providers_.end())
            for (const NamePlace& place : found->second)
                if (!replaces_it || place.model != taker)
                    return Source{Source::Kind::provided, place.model, place.index};
        return std::nullopt;
    }

    // How a source is named, and in what unit and axis it comes.
    struct Giver {
        std::string who, unit;
        contract::Axis axis;
    };

    Giver giver(const Source& source) const {
        if (source.kind == Source::Kind::fact)
            return {"the host", facts()[source.index].name.unit, facts()[source.index].name.axis};
        const contract::Model& model = models()[source.model];
        if (source.kind == Source::Kind::provided)
            return {model.where(), model.provides[source.index].unit, model.provides[source.index].axis};
        return {model.where(), model.settings[source.index].unit,
                contract::axis_of(model.settings[source.index].varies_by)};
    }

    Link link(const Source& source, const std::string& who, const std::string& name, const std::string& unit,
              contract::Axis axis) {
        const Giver from = giver(source);
        if (from.axis != axis)
            errors_.push_back(fmt::format("{}: axis clash: {} takes it by {}, {} gives it by {}; declare the same axis",
                                          name, who, contract::to_text(axis), from.who, contract::to_text(from.axis)));
        const auto conversion = fields::conversion(from.unit, unit);
        if (!conversion)
            errors_.push_back(
                fmt::format("{}: unit clash: {} takes it in {}, {} gives it in {}; declare a unit of the same kind",
                            name, who, unit, from.who, from.unit));
        return {source, conversion.value_or(fields::Conversion{})};
    }

    Link link_to(std::optional<std::size_t> taker, const std::string& who, const std::string& name,
                 const std::string& unit, contract::Axis axis) {
        const auto source = source_for(taker.value_or(models().size()), name);
        if (source) return link(*source, who, name, unit, axis);
        if (const auto setting = settings_.find(name); setting != settings_.end())
            errors_.push_back(
                fmt::format("{}: {} needs it, but it is a setting of {}, which only a model that replaces it may need",
                            name, who, models()[setting->second.model].where()));
        else
            errors_.push_back(fmt::format("{}: {} needs it, and no fact or loaded model gives it; {}", name, who,
                                          advice(name, all_names())));
        return {};
    }

    void link_needs() {
        for (std::size_t m = 0; m < models().size(); ++m) {
            graph_.needs.emplace_back();
            for (const contract::Name& need : models()[m].needs)
                graph_.needs[m].push_back(link_to(m, models()[m].where(), need.name, need.unit, need.axis));
        }
    }

    void link_settings() {
        for (std::size_t m = 0; m < models().size(); ++m) {
            graph_.settings.emplace_back(models()[m].settings.size());
            for (std::size_t s = 0; s < models()[m].settings.size(); ++s) {
                const contract::Setting& setting = models()[m].settings[s];
                const std::string name = models()[m].id + "." + setting.name;
                const auto preference = preferred_.find(name);
                if (preference == preferred_.end()) continue;
                graph_.settings[m][s] = link(preferred_source(preference->second, name), models()[m].where(), name,
                                             setting.unit, contract::axis_of(setting.varies_by));
            }
        }
    }

    void link_host() {
        const auto take = [&](const char* name, const char* unit, contract::Axis axis) {
            return link_to(std::nullopt, "the host", name, unit, axis);
        };
        graph_.host = {.fed = take("run.fed", "1", contract::Axis::step),
                       .good = take("run.good", "1", contract::Axis::step),
                       .web_length = take("web.length", "m", contract::Axis::order),
                       .web_area = take("web.area", "m2", contract::Axis::order),
                       .issued = take("paper.issued", "kg", contract::Axis::ply),
                       .adhesive = take("adhesive.dry", "kg", contract::Axis::order),
                       .run_waste = take("step.run_waste", "1", contract::Axis::step),
                       .setup_sheets = take("step.setup_sheets", "1", contract::Axis::step),
                       .order_change = take("web.order_change", "m", contract::Axis::order),
                       .roll_loss = take("web.roll_loss", "1", contract::Axis::order)};
    }

    void find_shedder() {
        std::vector<std::size_t> shedders;
        for (std::size_t m = 0; m < models().size(); ++m)
            if (!models()[m].losses.empty()) shedders.push_back(m);
        graph_.shedder = graph_.host.good.source.model;
        for (const std::size_t m : shedders)
            if (m != graph_.shedder)
                errors_.push_back(
                    fmt::format("losses: given twice: {} sheds, but run.good comes from {}; one model lays out the run "
                                "and sheds its losses: load one of them",
                                models()[m].where(), models()[graph_.shedder].where()));
        check_causes(models()[graph_.shedder]);
    }

    // The ledger measures production under these causes: a loss under any other would be expected of no machine.
    void check_causes(const contract::Model& shedder) {
        static const std::vector<std::string> causes = {"roll-ends", "side-trim", "order-change", "corrugator-run",
                                                        "surplus",   "setup",     "rejects",      "cut-out"};
        for (const contract::Loss& loss : shedder.losses)
            if (std::find(causes.begin(), causes.end(), loss.cause) == causes.end())
                errors_.push_back(fmt::format("{}: no cause of a run's losses: found {}; shed it under one of {}",
                                              shedder.where(), loss.cause, fmt::join(causes, ", ")));
    }

    void renumber(const ModelOrder& order) {
        std::vector<std::size_t> now(order.models.size());
        for (std::size_t i = 0; i < order.models.size(); ++i) now[order.models[i]] = i;
        Graph result;
        for (const std::size_t old : order.models) {
            result.models.push_back(std::move(graph_.models[old]));
            result.needs.push_back(std::move(graph_.needs[old]));
            result.settings.push_back(std::move(graph_.settings[old]));
        }
        const auto move = [&](Link& link) {
            if (link.source.kind != Source::Kind::fact) link.source.model = now[link.source.model];
        };
        for (auto& links : result.needs) std::for_each(links.begin(), links.end(), move);
        for (auto& links : result.settings)
            for (auto& replaced : links)
                if (replaced) move(*replaced);
        result.host = graph_.host;
        HostLinks& host = result.host;
        for (Link* link : {&host.fed, &host.good, &host.web_length, &host.web_area, &host.issued, &host.adhesive,
                           &host.run_waste, &host.setup_sheets, &host.order_change, &host.roll_loss})
            move(*link);
        result.shedder = now[graph_.shedder];
        result.first_late = order.first_late;
        graph_ = std::move(result);
    }

    std::vector<std::string> ids() const {
        std::vector<std::string> all;
        for (const contract::Model& model : models()) all.push_back(model.id);
        return all;
    }

    std::vector<std::string> all_names() const {
        std::vector<std::string> all;
        for (const auto& [name, index] : facts_) all.push_back(name);
        for (const auto& [name, places] : providers_) all.push_back(name);
        return all;
    }

    static std::string advice(const std::string& word, const std::vector<std::string>& known) {
        const auto near = base::nearest(word, known);
        return near ? fmt::format("did you mean {}?", *near) : "load a model that gives it";
    }

    const std::vector<plant::Preference>& preferences_;
    Graph graph_;
    std::map<std::string, std::size_t> facts_;
    std::map<std::string, std::vector<NamePlace>> providers_;
    std::map<std::string, NamePlace> settings_;
    std::map<std::string, std::size_t> preferred_;
    std::vector<std::string> errors_;
};

}  // namespace

Graph join(std::vector<contract::Model> models, const std::vector<plant::Preference>& preferences) {
    return Joiner(std::move(models), preferences).join();
}

}  // namespace flutebook::engine
