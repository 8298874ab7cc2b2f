#include "host/services/orders/material_lines.hpp"

#include <algorithm>

namespace flutebook::services {

namespace {

bool is_material(const engine::Graph& graph, const engine::LineAmount& line) {
    return graph.models[line.model].lines[line.line].cost_class == contract::CostClass::material;
}

bool takes_adhesive(const contract::Model& model) {
    return std::any_of(model.needs.begin(), model.needs.end(),
                       [](const contract::Name& need) { return need.name == "adhesive.dry"; });
}

}  // namespace

bool is_of_ply(const engine::Graph& graph, const engine::LineAmount& line, std::size_t ply) {
    return line.ply == ply && is_material(graph, line);
}

bool is_of_adhesive(const engine::Graph& graph, const engine::LineAmount& line) {
    return line.step == 0 && !line.ply && is_material(graph, line) && takes_adhesive(graph.models[line.model]);
}

}  // namespace flutebook::services
