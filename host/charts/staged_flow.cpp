#include "host/charts/staged_flow.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/render/svg_parts.hpp"

namespace flutebook::charts {

namespace {

using render::svg_number;

constexpr double flow_width = 1180, tallest_stage = 210, node_width = 5;
constexpr double least_room = 34, node_gap = 10, top_edge = 8;

struct DrawnNode {
    double x = 0, y = 0, height = 0, in = 0, out = 0, in_used = 0, out_used = 0;
};

class FlowDrawing {
public:
    explicit FlowDrawing(const StagedFlow& values) : values_(values), drawn_(values.nodes.size()) {
        for (const FlowNode& node : values.nodes) last_stage_ = std::max(last_stage_, node.stage);
        measure();
        place_across();
        place_down();
    }

    std::string text() {
        std::string shapes;
        for (const std::size_t i : in_order()) shapes += stream_mark(values_.streams[i]);
        for (std::size_t i = 0; i < drawn_.size(); ++i) shapes += node_mark(i);
        return chart(values_.title, flow_width, height_, shapes);
    }

private:
    void measure() {
        std::vector<double> stages(last_stage_ + 1);
        for (const FlowStream& stream : values_.streams) {
            drawn_[stream.from].out += stream.value;
            drawn_[stream.to].in += stream.value;
        }
        for (std::size_t i = 0; i < drawn_.size(); ++i)
            stages[values_.nodes[i].stage] += std::max(drawn_[i].in, drawn_[i].out);
        const double most = *std::max_element(stages.begin(), stages.end());
        scale_ = most > 0 ? tallest_stage / most : 0;
        for (DrawnNode& node : drawn_) node.height = std::max(std::max(node.in, node.out) * scale_, 1.5);
    }

    [[nodiscard]] double label_room(std::size_t stage) const {
        double room = 0;
        for (const FlowNode& node : values_.nodes)
            if (node.stage == stage) room = std::max({room, strong_width(node.name), label_width(node.figure)});
        return std::min(room + 10, flow_width / 5);
    }

    void place_across() {
        const double left = label_room(0), right = last_stage_ == 0 ? 0 : label_room(last_stage_);
        between_ = last_stage_ == 0 ? 0 : (flow_width - left - right - node_width) / static_cast<double>(last_stage_);
        for (std::size_t i = 0; i < drawn_.size(); ++i)
            drawn_[i].x = left + between_ * static_cast<double>(values_.nodes[i].stage);
    }

    void place_down() {
        double from = top_edge;
        for (const FlowNode::Lane lane : {FlowNode::Lane::board, FlowNode::Lane::scrap}) {
            std::vector<double> at(last_stage_ + 1, from);
            for (std::size_t i = 0; i < drawn_.size(); ++i) {
                const FlowNode& node = values_.nodes[i];
                if (node.lane != lane) continue;
                drawn_[i].y = at[node.stage];
                at[node.stage] += std::max(drawn_[i].height, least_room) + node_gap;
            }
            from = *std::max_element(at.begin(), at.end());
        }
        height_ = from;
    }

    // Streams leave a node from top to bottom as their ends lie, and reach the next one likewise.
    [[nodiscard]] std::vector<std::size_t> in_order() const {
        std::vector<std::size_t> order(values_.streams.size());
        for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
        std::stable_sort(order.begin(), order.end(), [&](std::size_t left, std::size_t right) {
            const FlowStream &a = values_.streams[left], &b = values_.streams[right];
            const double a_from = drawn_[a.from].y, b_from = drawn_[b.from].y;
            return a_from != b_from ? a_from < b_from : drawn_[a.to].y < drawn_[b.to].y;
        });
        return order;
    }

    std::string stream_mark(const FlowStream& stream) {
        DrawnNode &from = drawn_[stream.from], &to = drawn_[stream.to];
        const double wide = stream.value * scale_;
        const double x0 = from.x + node_width, x1 = to.x, middle = (x0 + x1) / 2;
        const double y0 = from.y + from.out_used, y1 = to.y + to.in_used;
        from.out_used += wide;
        to.in_used += wide;
        const double least = std::max(wide, 0.6);
        const std::string d = fmt::format("M{0} {2}C{4} {2} {4} {3} {1} {3}V{6}C{4} {6} {4} {5} {0} {5}Z",
                                          svg_number(x0), svg_number(x1), svg_number(y0), svg_number(y1),
                                          svg_number(middle), svg_number(y0 + least), svg_number(y1 + least));
        const char* classes = stream.kind == FlowStream::Kind::board  ? "flow-board"
                              : stream.kind == FlowStream::Kind::lost ? "flow-lost"
                                                                      : "flow-scrap";
        return marked(stream.mark, path(classes, d));
    }

    std::string node_mark(std::size_t i) {
        const FlowNode& node = values_.nodes[i];
        const DrawnNode& drawn = drawn_[i];
        const bool is_first = node.stage == 0, is_last = node.stage == last_stage_;
        const double room = is_first || is_last ? label_room(node.stage) - 10 : between_ - 16;
        const double x = is_first ? drawn.x - 8 : drawn.x + node_width + 6;
        std::string shapes = rectangle("node", {drawn.x, drawn.y, node_width, drawn.height});
        shapes += label(is_first ? "strong end halo" : "strong halo", x, drawn.y + 11, fitted(node.name, room));
        shapes += label(is_first ? "end halo" : "halo", x, drawn.y + 11 + label_height, fitted(node.figure, room));
        return marked({node.name + (node.figure.empty() ? "" : ", " + node.figure), node.link}, shapes);
    }

    const StagedFlow& values_;
    std::vector<DrawnNode> drawn_;  // as the nodes
    std::size_t last_stage_ = 0;
    double scale_ = 0, between_ = 0, height_ = 0;
};

}  // namespace

std::string staged_flow(const StagedFlow& values) {
    if (values.nodes.empty()) return chart(values.title, flow_width, least_room, {});
    const StagedFlow drawn = with_others(values);
    return FlowDrawing(drawn).text();
}

}  // namespace flutebook::charts
