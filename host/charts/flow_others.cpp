// Small nodes of a stage as one, with their streams: a plant with many machines can still be read.
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <tuple>

#include "host/charts/staged_flow.hpp"

namespace flutebook::charts {

namespace {

constexpr double least_share_of_flow = 0.01;

// What a node passes: the greater of what comes in and what goes out.
std::vector<double> passed_by(const StagedFlow& values) {
    std::vector<double> in(values.nodes.size()), out(values.nodes.size());
    for (const FlowStream& stream : values.streams) {
        out[stream.from] += stream.value;
        in[stream.to] += stream.value;
    }
    for (std::size_t i = 0; i < in.size(); ++i) in[i] = std::max(in[i], out[i]);
    return in;
}

// The node that each node is drawn as, in the flow with the small ones as one.
std::vector<std::size_t> gather(const StagedFlow& values, StagedFlow& result) {
    const auto passed = passed_by(values);
    const double whole = passed.empty() ? 0 : *std::max_element(passed.begin(), passed.end());
    using Row = std::tuple<std::size_t, FlowNode::Lane>;
    std::map<Row, std::vector<std::size_t>> small;
    for (std::size_t i = 0; i < passed.size(); ++i)
        if (passed[i] < least_share_of_flow * whole) small[{values.nodes[i].stage, values.nodes[i].lane}].push_back(i);
    std::vector<std::size_t> drawn_as(passed.size());
    std::map<Row, std::size_t> others;
    for (std::size_t i = 0; i < passed.size(); ++i) {
        const FlowNode& node = values.nodes[i];
        const Row row{node.stage, node.lane};
        const auto& gathered = small[row];
        const bool is_gathered =
            gathered.size() > 1 && std::find(gathered.begin(), gathered.end(), i) != gathered.end();
        if (is_gathered && others.count(row) == 1) {
            drawn_as[i] = others[row];
            result.nodes[drawn_as[i]].figure += ", " + node.name;
            continue;
        }
        drawn_as[i] = result.nodes.size();
        result.nodes.push_back(node);
        if (!is_gathered) continue;
        others[row] = drawn_as[i];
        result.nodes.back().name = fmt::format("{} others", gathered.size());
        result.nodes.back().figure = node.name;
        result.nodes.back().link = values.others_link;
    }
    return drawn_as;
}

}  // namespace

StagedFlow with_others(const StagedFlow& values) {
    StagedFlow result;
    result.title = values.title;
    result.others_link = values.others_link;
    const auto drawn_as = gather(values, result);
    for (FlowStream stream : values.streams) {
        const bool is_gathered = result.nodes[drawn_as[stream.from]].name != values.nodes[stream.from].name ||
                                 result.nodes[drawn_as[stream.to]].name != values.nodes[stream.to].name;
        stream.from = drawn_as[stream.from];
        stream.to = drawn_as[stream.to];
        const auto same = std::find_if(result.streams.begin(), result.streams.end(), [&](const FlowStream& item) {
            return item.from == stream.from && item.to == stream.to && item.kind == stream.kind;
        });
        if (!is_gathered || same == result.streams.end()) {
            result.streams.push_back(std::move(stream));
            continue;
        }
        same->value += stream.value;
        same->mark = {same->mark.name + "; " + stream.mark.name, values.others_link};
    }
    return result;
}

}  // namespace flutebook::charts
