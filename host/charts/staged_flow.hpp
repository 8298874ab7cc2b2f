// A flow chart from stage to stage: a stream's width is its mass. Nodes of a stage that pass less than a hundredth of
// the whole are one node, "n others", so that a plant with many machines can still be read.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "host/charts/marks.hpp"

namespace flutebook::charts {

struct FlowNode {
    /// The scrap lane lies below the others.
    enum class Lane { board, scrap };
    std::string name, figure;  // the second line of its label
    std::string link;
    std::size_t stage;
    Lane lane = Lane::board;
};

/// From a node to one of a later stage; not of a mass that is zero or less.
struct FlowStream {
    enum class Kind { board, lost, scrap };
    std::size_t from, to;  // indices of nodes
    double value;
    Kind kind;
    Mark mark;
};

struct StagedFlow {
    std::string title;
    std::vector<FlowNode> nodes;  // those of a stage from top to bottom
    std::vector<FlowStream> streams;
    std::string others_link;  // of the nodes that are one
};

[[nodiscard]] std::string staged_flow(const StagedFlow& values);

/// The flow with the small nodes of each stage as one: what staged_flow() draws.
[[nodiscard]] StagedFlow with_others(const StagedFlow& values);

}  // namespace flutebook::charts
