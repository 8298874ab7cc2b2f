#include "tests/unit/charts/chart_examples.hpp"

namespace flutebook::charts {

Waterfall example_fall() {
    using Kind = WaterfallStep::Kind;
    return {"from quoted to actual",
            {{"quoted", "8 183.80", {"quoted 8 183.80", "/orders/1/cost"}, 8183.80, Kind::level},
             {"volume", "+120.00", {"volume +120.00", "#lines"}, 120, Kind::change},
             {"yield", "-45.50", {"yield -45.50", "#lines"}, -45.5, Kind::change},
             {"actual", "8 258.30", {"actual 8 258.30", "/orders/1/cost"}, 8258.3, Kind::level}}};
}

LinesChart example_lines() {
    LinesChart chart{"lost against expected", "% of issued paper", "lost 9.76", "expected 9.14", "issued 105 t", {}};
    for (const char* month : {"A", "S", "O"})
        chart.points.push_back({month, {std::string("month ") + month, "/months/2026-10"}, 9.76, 9.14, 105});
    return chart;
}

StagedFlow example_flow() {
    using Lane = FlowNode::Lane;
    using Kind = FlowStream::Kind;
    return {"where every tonne went",
            {{"Paper store", "100 t", "/a", 0, Lane::board},
             {"C1", "98.4 t in", "/b", 1, Lane::board},
             {"C2", "0.9 t in", "/c", 1, Lane::board},
             {"C3", "0.7 t in", "/d", 1, Lane::board},
             {"Boxes, sheets", "92 t", "/e", 2, Lane::board},
             {"Scrap", "8 t", "/f", 2, Lane::scrap}},
            {{0, 1, 98.4, Kind::board, {"paper to C1, 98.4 t", "/1"}},
             {0, 2, 0.9, Kind::board, {"paper to C2, 0.9 t", "/2"}},
             {0, 3, 0.7, Kind::board, {"paper to C3, 0.7 t", "/3"}},
             {1, 4, 91, Kind::board, {"boxes, 91 t", "/4"}},
             {1, 5, 7.4, Kind::lost, {"lost at C1, 7.4 t", "/5"}},
             {2, 5, 0.9, Kind::lost, {"lost at C2, 0.9 t", "/6"}},
             {3, 5, 0.7, Kind::lost, {"lost at C3, 0.7 t", "/7"}}},
            "/months/2026-10#centres"};
}

std::map<std::string, std::string> drawn_forms() {
    const std::vector<RankedBar> bars = {{{"side trim 20 kg, expected 18", "/x"}, 20, 18, "side-trim"},
                                         {{"an order, 5 kg under", "/y"}, -5, {}, ""}};
    std::string ranked;
    for (const auto& bar : ranked_bars(bars, "r")) ranked += bar;
    const StackedBar stacked{"shares",
                             {{"boxes 92 %", {"boxes 92 %", "/p"}, 92, ""},
                              {"trim 7 %", {"trim 7 %", "/q"}, 7, "side-trim"},
                              {"", {"setup 0.6 %", "/s"}, 0.6, "setup"},
                              {"", {"rejects 0.4 %", "/t"}, 0.4, "rejects"}},
                             "/o"};
    LinesChart lines = example_lines();
    lines.points[1].actual = 12.1;
    return {{"lines", lines_chart(lines)},
            {"ranked-bars", ranked},
            {"stacked-bar", stacked_bar(stacked, "s")},
            {"staged-flow", staged_flow(example_flow())},
            {"waterfall", waterfall(example_fall())}};
}

std::string all_forms() {
    std::string text;
    for (const auto& [name, drawn] : drawn_forms()) text += drawn;
    return text;
}

}  // namespace flutebook::charts
