#include "host/explain/figure_index.hpp"

#include "host/engine/facts.hpp"

namespace flutebook::explain {

namespace {

using contract::Axis;
using Kind = FigureAt::Kind;

FigureAt figure_of(const engine::Source& source, std::size_t at) {
    switch (source.kind) {
        case engine::Source::Kind::fact:
            return {Kind::fact, 0, source.index, at};
        case engine::Source::Kind::provided:
            return {Kind::provided, source.model, source.index, at};
        case engine::Source::Kind::setting:
            break;
    }
    return {Kind::setting, source.model, source.index, at};
}

}  // namespace

void FigureIndex::add(std::vector<FigureAt>& result, FigureAt first, Axis axis, std::optional<std::size_t> step) const {
    if (step && axis == Axis::step) {
        first.at = *step;
        return result.push_back(first);
    }
    if (step && axis == Axis::ply && *step != 0) return;
    for (first.at = 0; first.at < shape_.extent(axis); ++first.at) result.push_back(first);
}

void FigureIndex::add_lines(std::vector<FigureAt>& result, const std::string& name,
                            std::optional<std::size_t> step) const {
    for (std::size_t m = 0; m < graph_.models.size(); ++m)
        for (std::size_t l = 0; l < graph_.models[m].lines.size(); ++l) {
            const contract::Line& line = graph_.models[m].lines[l];
            const bool is_elsewhere = step && line.axis == Axis::order && *step + 1 != shape_.steps;
            if (line.name == name && !is_elsewhere) add(result, {Kind::line, m, l, 0}, line.axis, step);
        }
}

void FigureIndex::add_formulas(std::vector<FigureAt>& result, const std::string& name,
                               std::optional<std::size_t> step) const {
    for (std::size_t f = 0; f < formulas_.size(); ++f)
        if (formulas_[f].name == name && (!step || !formulas_[f].step || *step == *formulas_[f].step))
            result.push_back({Kind::formula, 0, f, 0});
}

void FigureIndex::add_losses(std::vector<FigureAt>& result, const std::string& name,
                             std::optional<std::size_t> step) const {
    const std::vector<contract::Loss>& losses = graph_.models[graph_.shedder].losses;
    for (std::size_t i = 0; i < losses.size(); ++i)
        if (losses[i].cause == name) add(result, {Kind::loss, graph_.shedder, i, 0}, Axis::step, step);
}

// A model that replaces another's name stands behind it, and its number counts.
void FigureIndex::add_provided(std::vector<FigureAt>& result, const std::string& name,
                               std::optional<std::size_t> step) const {
    for (std::size_t m = graph_.models.size(); m-- > 0;)
        for (std::size_t p = 0; p < graph_.models[m].provides.size(); ++p)
            if (graph_.models[m].provides[p].name == name)
                return add(result, {Kind::provided, m, p, 0}, graph_.models[m].provides[p].axis, step);
}

// What other models charge is known only while it is added up, and where a model asks for it.
void FigureIndex::add_fact(std::vector<FigureAt>& result, const std::string& name,
                           std::optional<std::size_t> step) const {
    const std::size_t fact = engine::fact_index(name);
    if (fact == engine::facts().size() || engine::facts()[fact].fill == nullptr) return;
    add(result, {Kind::fact, 0, fact, 0}, engine::facts()[fact].name.axis, step);
}

void FigureIndex::add_setting(std::vector<FigureAt>& result, const std::string& name,
                              std::optional<std::size_t> step) const {
    for (std::size_t m = 0; m < graph_.models.size(); ++m)
        for (std::size_t s = 0; s < graph_.models[m].settings.size(); ++s)
            if (graph_.models[m].id + "." + graph_.models[m].settings[s].name == name)
                add(result, setting(m, s, 0), contract::axis_of(graph_.models[m].settings[s].varies_by), step);
}

std::vector<FigureAt> FigureIndex::named(const std::string& name, std::optional<std::size_t> step) const {
    std::vector<FigureAt> result;
    for (const auto find : {&FigureIndex::add_lines, &FigureIndex::add_formulas, &FigureIndex::add_losses,
                            &FigureIndex::add_provided, &FigureIndex::add_fact, &FigureIndex::add_setting}) {
        (this->*find)(result, name, step);
        if (!result.empty()) break;
    }
    return result;
}

FigureAt FigureIndex::need(std::size_t model, std::size_t need, std::size_t at) const {
    return figure_of(graph_.needs[model][need].source, at);
}

FigureAt FigureIndex::setting(std::size_t model, std::size_t setting, std::size_t at) const {
    const auto& replaced = graph_.settings[model][setting];
    return replaced ? figure_of(replaced->source, at) : FigureAt{Kind::setting, model, setting, at};
}

}  // namespace flutebook::explain
