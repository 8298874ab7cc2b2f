// An index of figures by name: the figure of a name, and its places.
#pragma once

#include <compare>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "host/engine/costing/columns.hpp"
#include "host/engine/graph/graph.hpp"
#include "host/explain/formula.hpp"

namespace flutebook::explain {

/// One number of a costed row.
struct FigureAt {
    enum class Kind : char { line, formula, loss, provided, fact, setting };
    Kind kind;
    std::size_t model, index;  // `model` is 0 of a fact and a formula; `index` among the model's own, facts or formulas
    std::size_t at;            // on its axis; 0 of a formula
    friend auto operator<=>(const FigureAt&, const FigureAt&) = default;
};

class FigureIndex {
public:
    /// `graph` and `formulas` must outlive it.
    FigureIndex(const engine::Graph& graph, engine::Shape shape, const std::vector<Formula>& formulas)
        : graph_(graph), shape_(shape), formulas_(formulas) {}

    /// At every place, or at one step where one is given: a line by ply and the whole order's count at the corrugator,
    /// a line of the order at dispatch. Empty where nothing is called so.
    [[nodiscard]] std::vector<FigureAt> named(const std::string& name, std::optional<std::size_t> step = {}) const;

    /// What a model takes: a need, or a setting, which another model may give.
    [[nodiscard]] FigureAt need(std::size_t model, std::size_t need, std::size_t at) const;
    [[nodiscard]] FigureAt setting(std::size_t model, std::size_t setting, std::size_t at) const;

private:
    void add(std::vector<FigureAt>& result, FigureAt first, contract::Axis axis, std::optional<std::size_t> step) const;
    void add_lines(std::vector<FigureAt>& result, const std::string& name, std::optional<std::size_t> step) const;
    void add_formulas(std::vector<FigureAt>& result, const std::string& name, std::optional<std::size_t> step) const;
    void add_losses(std::vector<FigureAt>& result, const std::string& name, std::optional<std::size_t> step) const;
    void add_provided(std::vector<FigureAt>& result, const std::string& name, std::optional<std::size_t> step) const;
    void add_fact(std::vector<FigureAt>& result, const std::string& name, std::optional<std::size_t> step) const;
    void add_setting(std::vector<FigureAt>& result, const std::string& name, std::optional<std::size_t> step) const;

    const engine::Graph& graph_;
    engine::Shape shape_;
    const std::vector<Formula>& formulas_;
};

}  // namespace flutebook::explain
