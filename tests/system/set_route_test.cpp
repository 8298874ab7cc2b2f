// A set whose request says which machines make each of its pieces: quoted, saved, worked out again and taken.
#include <catch2/catch.hpp>

#include "tests/system/set_plant.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;
using Names = std::vector<std::string>;

namespace {

// The three pieces of the set are made by these machines.
class RoutedSet : public SetPlant {
public:
    explicit RoutedSet(const std::string& route) {
        const std::string file = write_request("S-1", "500");
        replace("S-1.yaml", "margin: 0.18\n", "margin: 0.18\nroute: " + route + "\n");
        words_ = {"quote", file, "--json"};
    }

    [[nodiscard]] Json quoted(bool is_saved = false) const {
        std::vector<std::string> words = words_;
        if (is_saved) words.push_back("--save");
        return document(words).at("requests").at(0);
    }
    [[nodiscard]] Ended refused() const { return ask(words_); }

private:
    std::vector<std::string> words_;
};

Names route_in(const Json& request, std::size_t piece) {
    return request.at("pieces").at(piece).at("quotes").at(0).at("route");
}

double cost_of(const Json& request) {
    return request.at("quotes").at(0).at("cost");
}

}  // namespace

TEST_CASE("each piece of a set is made by the route that its request gives it, the others by the cheapest") {
    const Json cheapest = RoutedSet("{pad: []}").quoted();
    // The other die cutter.
    const Names usual = route_in(cheapest, 0), other = {usual == Names{"DC1"} ? "DC2" : "DC1"};
    const Json routed = RoutedSet("{tray: [" + other.front() + "]}").quoted();
    CHECK(route_in(routed, 0) == other);
    CHECK(route_in(routed, 1) == route_in(cheapest, 1));
    CHECK(route_in(routed, 2).empty());
    CHECK(cost_of(routed) > cost_of(cheapest));
}

TEST_CASE("a route by piece that says what is the cheapest changes no figure") {
    SetPlant plain;
    const std::string file = plain.write_request("S-1", "500");
    const Json free = plain.document({"quote", file, "--json"}).at("requests").at(0);
    const Names tray = route_in(free, 0), lid = route_in(free, 1);
    const Json given = RoutedSet("{tray: [" + tray.front() + "], lid: [" + lid.front() + "], pad: []}").quoted();
    CHECK(cost_of(given) == cost_of(free));
    for (std::size_t piece = 0; piece < 3; ++piece) CHECK(route_in(given, piece) == route_in(free, piece));
}

TEST_CASE("a saved set with a route by piece is shown, rechecked to the byte, copied and taken with it") {
    const RoutedSet plant("{tray: [DC1], lid: [PR1, DC2], pad: [SL1]}");
    const Json saved = plant.quoted(true);
    CHECK(route_in(saved, 0) == Names{"DC1"});
    CHECK(route_in(saved, 1) == Names{"PR1", "DC2"});
    CHECK(route_in(saved, 2) == Names{"SL1"});

    CHECK_THAT(plant.ask({"quote", "show", "Q000001"}).output,
               Contains("C1 > DC1") && Contains("> PR1 > DC2") && Contains("> SL1"));
    const Json again = Json::parse(plant.ask({"quote", "recheck", "Q000001", "--json"}).output);
    CHECK(again["saved_files"]["ends"] == "to-the-byte");
    CHECK(again["cause"] == "nothing-differs");
    CHECK_THAT(plant.ask({"quote", "copy", "Q000001"}).output,
               Contains("route: {tray: [DC1], lid: [PR1, DC2], pad: [SL1]}"));

    const Json taken = plant.document({"order", "Q000001", "500", "--as", "26-0417", "--json"});
    CHECK(taken["pieces"][0]["route"] == Names{"DC1"});
    CHECK(taken["pieces"][1]["route"] == Names{"PR1", "DC2"});
    CHECK(taken["pieces"][2]["route"] == Names{"SL1"});
}

TEST_CASE("a set that was made on the route of each piece cost what it was quoted at") {
    RoutedSet plant("{tray: [DC2], lid: [DC1], pad: []}");
    const Json saved = plant.quoted(true);
    static_cast<void>(plant.document({"order", "Q000001", "500", "--as", "26-0417", "--json"}));
    for (const Json& piece : saved["pieces"])
        plant.produce("26-0417/" + piece["piece"].get<std::string>(), piece["quotes"][0]);
    const Json cost = plant.document({"order", "cost", "26-0417", "--json"});
    CHECK(cost["cost"]["quoted"].get<double>() == cost_of(saved));
    CHECK(cost["cost"]["actual"].get<double>() == cost_of(saved));
}

TEST_CASE("a set whose machine was taken out of the plant since is refused today at the piece's own route") {
    RoutedSet plant("{tray: [DC1], lid: [DC2]}");
    static_cast<void>(plant.quoted(true));
    plant.replace("machines.yaml", "  DC2: {kind: die-cutter", "  DC3: {kind: die-cutter");
    const Ended again = plant.ask({"quote", "recheck", "Q000001"});
    CHECK(again.exit_code == 1);
    CHECK_THAT(again.output + again.errors, Contains("route.lid[1]: unknown converter: found `DC2`"));
}

TEST_CASE("a route by piece that cannot make its piece refuses the request in one line") {
    const Ended ended = RoutedSet("{tray: [FG1]}").refused();
    CHECK(ended.exit_code == 1);
    REQUIRE(lines_of(ended.errors).size() == 1);
    CHECK_THAT(ended.errors, Contains("route.tray: a route that cannot make the box: expected a die cutter for style "
                                      "`TRAY-SET`, piece `tray`"));
}
