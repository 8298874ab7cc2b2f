// What makes a piece, and the route that a request gives: one list for every piece of a set, or one for each.
#include <catch2/catch.hpp>

#include "host/orders/route_reader.hpp"
#include "tests/unit/plant/plant_folder.hpp"

using namespace flutebook;
using namespace flutebook::fixture;

namespace {

// A tray that a die cutter makes, a lid that is glued as well, and a pad that the corrugator alone makes.
const char* const set_style = R"(styles:
  SET:
    title: Tray, lid and pad
    pieces:
      tray: {made_by: die-cutter, along: [L], across: [B]}
      lid: {made_by: [die-cutter, folder-gluer], along: [L + 40], across: [B + 40]}
      pad: {along: [L], across: [B]}
)";

// The folder's request, line 10 of which is its route, for a set.
class SetFolder : public PlantFolder {
public:
    explicit SetFolder(const std::string& route) {
        write("styles.yaml", set_style);
        change("r.yaml", "style: \"0201\"", "style: SET");
        change("r.yaml", "inside: {length: 400, width: 300, height: 250}", "inside: {length: 400, width: 300}");
        change("r.yaml", "route: [FG1]", "route: " + route);
    }
};

using Names = std::vector<std::string>;

// The machines that a piece is given; nothing where it is made by every way there is.
std::optional<Names> given(const SetFolder& folder, std::size_t piece) {
    const plant::Plant plant = folder.read();
    const orders::Request request = folder.read_request();
    const auto& route = request.route_of(piece);
    if (!route) return std::nullopt;
    Names result;
    for (const std::size_t machine : *route) result.push_back(plant.converters[machine].code);
    return result;
}

}  // namespace

TEST_CASE("a folder-gluer makes the slotted box, a die cutter what is drawn, no converter the sheet") {
    const box_styles::StyleList styles;
    CHECK(orders::stages_of(*styles.find("0201")) ==
          std::vector<box_styles::Stage>{{plant::Converter::Kind::folder_gluer}});
    CHECK(orders::stages_of(*styles.find("outline")) ==
          std::vector<box_styles::Stage>{{plant::Converter::Kind::die_cutter}});
    CHECK(orders::stages_of(*styles.find("0110")).empty());
    CHECK(styles.find("0999") == nullptr);
}

TEST_CASE("a set may be given a route for each piece") {
    const SetFolder folder("{tray: [DC1], lid: [DC1, FG1], pad: []}");
    CHECK_FALSE(folder.read_request().route);
    CHECK(given(folder, 0) == Names{"DC1"});
    CHECK(given(folder, 1) == Names{"DC1", "FG1"});
    CHECK(given(folder, 2) == Names{});
}

TEST_CASE("a piece that the route by piece leaves out has none") {
    const SetFolder folder("{pad: [DC1]}");
    CHECK_FALSE(given(folder, 0));
    CHECK_FALSE(given(folder, 1));
    CHECK(given(folder, 2) == Names{"DC1"});
}

TEST_CASE("a list is the route of every piece of a set") {
    const SetFolder folder("[DC1, FG1]");
    for (std::size_t piece = 0; piece < 3; ++piece) CHECK(given(folder, piece) == Names{"DC1", "FG1"});
}

TEST_CASE("a list that cannot make one piece of a set is refused with that piece and the form by piece") {
    CHECK(SetFolder("[DC1]").request_complaints() ==
          Lines{"r.yaml:10:8: route: a route that cannot make the box: expected a die cutter, then folder-gluer for "
                "style `SET`, piece `lid`; the route has no folder-gluer; a route of its own for each piece is "
                "`{tray: [...], lid: [...], pad: [...]}`"});
}

TEST_CASE("each route of a set is held against what makes its own piece, and every wrong one is named") {
    CHECK(SetFolder("{tray: [FG1], lid: [FG1, DC1], pad: [DC9]}").request_complaints() ==
          Lines{"r.yaml:10:15: route.tray: a route that cannot make the box: expected a die cutter for style `SET`, "
                "piece `tray`",
                "r.yaml:10:27: route.lid: a route that cannot make the box: expected a die cutter, then folder-gluer "
                "for style `SET`, piece `lid`; FG1 stands too early: put a folder-gluer behind the die cutter",
                "r.yaml:10:45: route.pad[1]: unknown converter: found `DC9`; expected one of `FG1`, `DC1`"});
}

TEST_CASE("a piece that the style lacks is answered by the list of its pieces") {
    CHECK(SetFolder("{top: [DC1]}").request_complaints() ==
          Lines{"r.yaml:10:9: route.top: unknown piece of style `SET`: found `top`; expected one of `tray`, `lid`, "
                "`pad`"});
}

TEST_CASE("a route by piece of nothing, and one of no list, are refused") {
    CHECK(SetFolder("{}").request_complaints() ==
          Lines{"r.yaml:10:8: route: an empty map: expected at least one entry"});
    CHECK(SetFolder("{tray: DC1}").request_complaints() ==
          Lines{"r.yaml:10:15: route.tray: wrong type: found a text, expected a list"});
}

TEST_CASE("a style of one piece has one route") {
    CHECK(request_complaints_after("route: [FG1]", "route: {body: [FG1]}") ==
          Lines{"r.yaml:10:8: route: a route by piece for a style of one piece: found a map for style `0201`, expected "
                "a list of machines such as `[DC1]`"});
}
