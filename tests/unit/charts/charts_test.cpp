// Charts as the text that they are: what is named, linked, drawn and cut.
#include <catch2/catch.hpp>
#include <regex>
#include <string>

#include "host/charts/scale.hpp"
#include "tests/unit/charts/chart_examples.hpp"

namespace flutebook::charts {

namespace {

std::size_t count_of(const std::string& text, const std::string& part) {
    std::size_t count = 0;
    for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++count;
    return count;
}

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

// How far outside the picture a label may reach, by the widest font: the greatest over all labels.
double outside(const std::string& svg) {
    static const std::regex view("viewBox=\"0 0 ([0-9.]+)");
    static const std::regex text("<text class=\"([^\"]*)\" x=\"([-0-9.]+)\" y=\"[-0-9.]+\">([^<]*)<");
    std::smatch found;
    std::regex_search(svg, found, view);
    const double width = std::stod(found[1]);
    double most = 0;
    for (std::sregex_iterator item(svg.begin(), svg.end(), text), end; item != end; ++item) {
        const std::string classes = (*item)[1], words = (*item)[3];
        const double x = std::stod((*item)[2]);
        const double wide = holds(classes, "strong") ? strong_width(words) : label_width(words);
        const double from = holds(classes, "end") ? x - wide : holds(classes, "mid") ? x - wide / 2 : x;
        most = std::max({most, -from, from + wide - width});
    }
    return most;
}

}  // namespace

TEST_CASE("Every mark of every chart has a name and a link") {
    const std::string text = all_forms();
    CHECK(count_of(text, "<a ") == count_of(text, "<title>"));
    CHECK(count_of(text, "<svg") == count_of(text, "aria-label"));
    CHECK(count_of(text, "<title></title>") == 0);
    CHECK(count_of(text, "href=\"\"") == 0);
}

TEST_CASE("A chart has the role of a group, since its marks are links") {
    const std::string text = all_forms();
    CHECK(count_of(text, "role=\"group\"") == count_of(text, "<svg"));
}

TEST_CASE("A chart has no style of its own: classes alone") {
    const std::string text = all_forms();
    CHECK_FALSE(holds(text, "style="));
    CHECK_FALSE(holds(text, "fill=\"#"));
    CHECK_FALSE(holds(text, "stroke="));
}

TEST_CASE("A name that holds markup is a name") {
    Waterfall fall = example_fall();
    fall.steps[1].label = fall.steps[1].mark.name = "<script>\"&";
    fall.steps[1].mark.link = "/x?a=\"&b";
    const std::string text = waterfall(fall);
    CHECK_FALSE(holds(text, "<script>"));
    CHECK(holds(text, "&lt;script&gt;&quot;&amp;"));
    CHECK(holds(text, "href=\"/x?a=&quot;&amp;b\""));
}

TEST_CASE("The same values give the same bytes") {
    CHECK(all_forms() == all_forms());
}

TEST_CASE("No label reaches beyond its picture, in the widest font") {
    CHECK(outside(waterfall(example_fall())) <= 0);
    CHECK(outside(lines_chart(example_lines())) <= 0);
    StagedFlow flow = example_flow();
    CHECK(outside(staged_flow(flow)) <= 0);
    for (FlowNode& node : flow.nodes) node.name = "A machine with quite a long name that nobody shortened " + node.name;
    CHECK(outside(staged_flow(flow)) <= 0);
}

TEST_CASE("A cause of loss is drawn in its own hatch") {
    const std::vector<RankedBar> bars = {{{"trim", "/x"}, 20, {}, "side-trim"}, {{"rejects", "/y"}, 2, {}, "rejects"}};
    const auto drawn = ranked_bars(bars, "r");
    CHECK(holds(drawn[0], "<pattern id=\"r0\" class=\"t-trim\""));
    CHECK(holds(drawn[0], "fill=\"url(#r0)\""));
    CHECK(holds(drawn[1], "class=\"lost t-rejects\""));
}

TEST_CASE("Bars of one list have one scale") {
    const std::vector<RankedBar> bars = {{{"a", "/a"}, 10, {}, ""}, {{"b", "/b"}, 5, {}, ""}};
    const auto drawn = ranked_bars(bars, "r");
    CHECK(holds(drawn[0], "width=\"236\""));
    CHECK(holds(drawn[1], "width=\"118\""));
}

TEST_CASE("Parts below a hundredth of a bar are one part") {
    const StackedBar bar{
        "shares",
        {{"a", {"a 990", "/a"}, 990, ""}, {"b", {"b 6", "/b"}, 6, "setup"}, {"c", {"c 4", "/c"}, 4, "rejects"}},
        "/others"};
    const std::string text = stacked_bar(bar, "s");
    CHECK(holds(text, "<title>b 6; c 4</title>"));
    CHECK(holds(text, "href=\"/others\""));
    CHECK(count_of(text, "<a ") == 2);
}

TEST_CASE("A small part alone stays itself") {
    const StackedBar bar{"shares", {{"a", {"a 990", "/a"}, 990, ""}, {"b", {"b 6", "/b"}, 6, "setup"}}, "/others"};
    CHECK(holds(stacked_bar(bar, "s"), "href=\"/b\""));
}

TEST_CASE("Machines that pass less than a hundredth of a flow are one node") {
    const StagedFlow flow = with_others(example_flow());
    REQUIRE(flow.nodes.size() == 5);
    CHECK(flow.nodes[2].name == "2 others");
    CHECK(flow.nodes[2].figure == "C2, C3");
    CHECK(flow.nodes[2].link == "/months/2026-10#centres");
}

TEST_CASE("Streams of machines that are one node are one stream, with all their mass") {
    const StagedFlow flow = with_others(example_flow());
    REQUIRE(flow.streams.size() == 5);
    CHECK(flow.streams[1].value == Approx(1.6));
    CHECK(flow.streams[1].mark.name == "paper to C2, 0.9 t; paper to C3, 0.7 t");
}

TEST_CASE("A flow of nothing is an empty picture") {
    CHECK(holds(staged_flow({"nothing", {}, {}, ""}), "aria-label=\"nothing\""));
}

TEST_CASE("A line has a gap where nothing is known") {
    LinesChart chart = example_lines();
    chart.points[1].actual.reset();
    CHECK(count_of(lines_chart(chart), "class=\"line-actual\"") == 2);
}

TEST_CASE("An axis counts in steps of 1, 2 or 5") {
    const Scale scale(8.7, 13.4, 4, 0, 100);
    CHECK(scale.ticks() == std::vector<double>{8, 10, 12, 14});
    CHECK(scale.at(8) == Approx(0));
    CHECK(scale.at(14) == Approx(100));
}

TEST_CASE("An axis of one value still has a width") {
    const Scale scale(0, 0, 4, 0, 100);
    CHECK(scale.ticks().size() >= 2);
}

TEST_CASE("A waterfall is drawn from level to level") {
    CHECK(waterfall({"one", {{"quoted", "10", {"quoted 10", "/q"}, 10, WaterfallStep::Kind::level}}}) ==
          "<svg class=\"drawing chart\" role=\"group\" aria-label=\"one\" viewBox=\"0 0 76 230\" width=\"76\" "
          "height=\"230\">\n<a href=\"/q\"><title>quoted 10</title>"
          "<rect class=\"level\" x=\"15.2\" y=\"24\" width=\"45.6\" height=\"172\"/>"
          "<text class=\"mid strong\" x=\"38\" y=\"18\">10</text><text class=\"mid\" x=\"38\" y=\"214\">quoted</text>"
          "</a>\n</svg>\n");
}

}  // namespace flutebook::charts
