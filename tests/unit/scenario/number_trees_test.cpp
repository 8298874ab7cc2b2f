// Numbers of a plant and of a request by their paths: what a path names, what a change does to it, and what is said of
// one that names nothing.
#include "host/scenario/number_trees.hpp"

#include <catch2/catch.hpp>

#include "host/base/errors.hpp"
#include "host/base/yaml/document.hpp"
#include "host/engine/engine.hpp"

using namespace flutebook;
using Catch::Matchers::Contains;
using scenario::MovedNumber;
using scenario::NumberTrees;

namespace {

constexpr const char* request_text =
    "request: R-1\ndate: 2026-10-15\nstyle: \"0201\"\ninside: {length: 400, width: 300, height: 250}\n"
    "board: B-140\nquantities: [500, 1000]\nmargin: 0.18\nextras:\n  delivery: {distance: 60}\n";

const plant::Plant& demo_plant() {
    static const plant::Plant plant = plant::read_plant(FLUTEBOOK_SOURCE_DIR "/config/demo");
    return plant;
}

const engine::Engine& demo_engine() {
    static const engine::Engine engine = engine::Engine::start(demo_plant(), FLUTEBOOK_PLUGIN_DIR);
    return engine;
}

NumberTrees demo_trees(const plant::Plant& plant = demo_plant()) {
    base::Diagnostics complaints;
    return {plant, demo_engine().graph().models, *base::parse_document(request_text, "r.yaml", complaints)};
}

scenario::NumberChange change_of(const std::string& text) {
    return std::get<scenario::NumberChange>(scenario::read_change(text));
}

std::vector<MovedNumber> moved_by(const std::string& text) {
    NumberTrees trees = demo_trees();
    return trees.change(change_of(text));
}

// "path: was -> now", one after the other.
std::vector<std::string> moves_of(const std::string& text) {
    std::vector<std::string> result;
    for (const MovedNumber& moved : moved_by(text))
        result.push_back(moved.path + ": " + moved.was + " -> " + moved.now);
    return result;
}

plant::Plant plant_with(const std::string& text) {
    NumberTrees trees = demo_trees();
    trees.change(change_of(text));
    return plant::read_plant(demo_plant(), trees.files());
}

std::string refusal_of(const std::string& text) {
    try {
        moved_by(text);
    } catch (const InputError& error) {
        CHECK(error.whose() == InputError::Whose::request);
        REQUIRE(error.lines().size() == 1);
        return error.lines().front();
    }
    return "";
}

using Texts = std::vector<std::string>;

}  // namespace

TEST_CASE("a list of dated prices is moved price by price, and its days stay") {
    CHECK(moves_of("papers.TL125.price=+5%") == Texts{"papers.TL125.price[2025-07-01].per_tonne: 482 -> 506.1",
                                                      "papers.TL125.price[2026-01-01].per_tonne: 505 -> 530.25",
                                                      "papers.TL125.price[2026-06-01].per_tonne: 490 -> 514.5",
                                                      "papers.TL125.price[2026-09-01].per_tonne: 520 -> 546"});
    const auto plant = plant_with("papers.TL125.price=+5%");
    CHECK(plant.find_paper("TL125")->prices.back().per_tonne == 546);
    CHECK(plant.find_paper("TL125")->prices.back().from == demo_plant().find_paper("TL125")->prices.back().from);
    CHECK(plant.find_paper("KL135")->prices.back().per_tonne == 668);
}

TEST_CASE("a value takes the place of every price of a dated list") {
    const auto plant = plant_with("papers.TL125.price=600");
    for (const auto& price : plant.find_paper("TL125")->prices) CHECK(price.per_tonne == 600);
}

TEST_CASE("a machine is named among machines or among those of its kind") {
    CHECK(moves_of("machines.FG1.setup.minutes=15") == Texts{"converters.FG1.setup.minutes: 25 -> 15"});
    CHECK(moves_of("converters.FG1.setup.minutes=15") == Texts{"converters.FG1.setup.minutes: 25 -> 15"});
    CHECK(moves_of("machines.C1.run_waste=-50%") == Texts{"corrugators.C1.run_waste: 0.018 -> 0.009"});
    CHECK(moves_of("machines.dispatch.minutes=20") == Texts{"dispatch.minutes: 12 -> 20"});
    CHECK(plant_with("machines.FG1.setup.minutes=15").find_converter("FG1")->setup_min == 15);
}

TEST_CASE("a setting is named with its model, with or without `plugins.` before it") {
    CHECK(moves_of("energy.power_price=0.19") == Texts{"plugins.energy.power_price: 0.148 -> 0.19"});
    CHECK(moves_of("plugins.energy.power_price=0.19") == Texts{"plugins.energy.power_price: 0.148 -> 0.19"});
}

TEST_CASE("a setting that no file gives is moved from its default") {
    CHECK(moves_of("energy.t_in=+10%") == Texts{"plugins.energy.t_in: 20 -> 22"});
    const auto plant = plant_with("energy.t_in=25");
    CHECK(demo_engine().with_settings_of(plant).settings().size() == demo_engine().settings().size());
}

TEST_CASE("a setting by request is moved in the request, given or not") {
    CHECK(moves_of("delivery.distance=+50%") == Texts{"request.extras.delivery.distance: 60 -> 90"});
    CHECK(moves_of("consumables.coverage=0.2").front().starts_with("request.extras.consumables.coverage: "));
    NumberTrees trees = demo_trees();
    trees.change(change_of("consumables.coverage=0.2"));
    const auto request = orders::read_request(demo_plant(), trees.request(), "r.yaml", request_text, std::nullopt);
    CHECK(request.find_extras("consumables")->find("coverage") != nullptr);
}

TEST_CASE("a key that its entry leaves out can be given a value, and its file's reader says whether it may be there") {
    CHECK(moves_of("request.colours=3") == Texts{"request.colours: - -> 3"});
    CHECK(plant_with("boards.B-140.caliper=3").find_board("B-140")->caliper_mm == 3);
    CHECK_THAT(refusal_of("request.colours=+10%"), Contains("no value to move: request.colours is not given"));
    CHECK_THROWS_AS(plant_with("machines.FG1.ups_max=4"), InputError);
}

TEST_CASE("a star stands for every name at its place") {
    const auto moves = moves_of("papers.*.grammage=+10%");
    CHECK(moves.size() == demo_plant().papers.size());
}

TEST_CASE("a model, or all machines, are moved number by number, and among many what is no number is passed over") {
    CHECK(moves_of("delivery=+10%").size() == 7);
    CHECK(moves_of("starch=+10%").front() == "plugins.starch.starch_price: 0.55 -> 0.605");
    CHECK(moves_of("machines.*.hourly=+10%").size() == moves_of("machines.*.hourly.*=+10%").size());
    CHECK(moves_of("machines.*.*=+0%").size() == moves_of("machines=+0%").size());
    CHECK(moves_of("plugins=+0%").size() == moves_of("plugins.*=+0%").size());
    CHECK_THAT(refusal_of("boards.*.plies=+5%"), Contains("not a number: found none at boards.*.plies"));
    CHECK_THAT(refusal_of("machines=5"), Contains("several numbers: found the whole of machines"));
    CHECK_THAT(refusal_of("run.speed=5"), Contains("found `speed` below plugins.run, which is empty"));
}

TEST_CASE("a number to which several paths lead is moved once") {
    CHECK(moves_of("*.FG1.hourly.labour=+10%") == Texts{"converters.FG1.hourly.labour: 95 -> 104.5"});
    CHECK(moves_of("papers.TL125.price.*.per_tonne=+10%").size() == moves_of("papers.TL125.price=+10%").size());
    CHECK(moves_of("*.C1.speed=+0%") == moves_of("corrugators.C1.speed=+0%"));
}

TEST_CASE("a number with a unit keeps it") {
    CHECK(moves_of("papers.KL205.grammage=+10%") == Texts{"papers.KL205.grammage: 42 lb/MSF -> 46.2 lb/MSF"});
}

TEST_CASE("a change of nothing leaves every text as it is") {
    for (const char* path : {"papers", "machines.*", "plugins.*.*", "flutes", "allowances", "request.inside"})
        for (const MovedNumber& moved : moved_by(std::string(path) + "=+0%")) CHECK(moved.was == moved.now);
}

TEST_CASE("an unknown name is answered by what there is at the first part that is not there") {
    CHECK_THAT(refusal_of("papers.TL12.price=+5%"),
               Contains("--with papers.TL12.price=+5%: no such number: found `TL12` in papers") && Contains("`TL125`"));
    CHECK_THAT(refusal_of("machines.FG1.setup.minuts=15"),
               Contains("found `minuts` in converters.FG1.setup; expected one of `minutes`, `sheets`"));
    CHECK_THAT(refusal_of("energy.power=1"), Contains("found `power` in plugins.energy") && Contains("`power_price`"));
    CHECK_THAT(refusal_of("nowhere.x=1"), Contains("found `nowhere` in the plant") && Contains("`papers`"));
    CHECK_THAT(refusal_of("papers.TL125.grammage.x=1"), Contains("papers.TL125.grammage, which is one value"));
}

TEST_CASE("one value is not given to several numbers that differ in kind, nor to what is no number") {
    CHECK_THAT(refusal_of("machines.FG1.setup=15"), Contains("several numbers: found 2 in converters.FG1.setup"));
    CHECK_THAT(refusal_of("machines.FG1.kind=3"),
               Contains("not a number: found `folder-gluer` at converters.FG1.kind"));
}

TEST_CASE("what is no change is told with how to write one") {
    for (const char* text : {"papers", "papers=", "=5", "a=+5", "a=5%", "a=five", "a=+x%", "a=+1,5%"})
        CHECK(std::holds_alternative<std::string>(scenario::read_change(text)));
    CHECK(change_of("a.b=-2.5%").percent == -2.5);
    CHECK(change_of("a.b=-3").value == "-3");
    CHECK(change_of("a.b=26 lb/MSF").value == "26 lb/MSF");
}

TEST_CASE("a number read off a ruler is moved as a decimal of its unit") {
    const auto moved = [](const char* text) { return scenario::moved_text(*scenario::written_number(text), 10); };
    CHECK(moved("15 1/4 in") == "16.775 in");
    CHECK(moved("3/8 in") == "0.4125 in");
    CHECK(moved("26 lb/MSF") == "28.6 lb/MSF");
    CHECK(moved("-3") == "-3.3");
    for (const char* text : {"2026-09-01", "B-140", "1 000", "1/0 in", "", "12x", "0.5.1"})
        CHECK_FALSE(scenario::written_number(text));
}

TEST_CASE("a number is told from its unit, whatever digits the unit has, and a day is none") {
    const auto grammage = scenario::written_number("135 g/m2");
    REQUIRE(grammage);
    CHECK(scenario::moved_text(*grammage, 10) == "148.5 g/m2");
    const auto length = scenario::written_number("15 1/4 in");
    REQUIRE(length);
    CHECK(scenario::moved_text(*length, 0) == "15.25 in");
    for (const char* text : {"2026-10-15", "1 000", "15 1/3 in", "C-125", ""}) {
        CAPTURE(text);
        CHECK_FALSE(scenario::written_number(text));
    }
}
