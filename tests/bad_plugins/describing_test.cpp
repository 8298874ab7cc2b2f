// Descriptions that the host does not believe: each is refused with the file, the model and what is wrong in it.
#include <fmt/format.h>

#include <map>

#include "tests/bad_plugins/says.hpp"
#include "tests/bad_plugins/trial.hpp"
#include "tests/support/row_source.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;
using bad::says;
using bad::Trial;

namespace {

void check_refused(const std::string& way, const std::vector<std::string>& cause) {
    const Trial trial(way, {way});
    CHECK_THAT(trial.refusal(), says(way, way, cause));
    CHECK(trial.host_lives_on());
}

}  // namespace

TEST_CASE("a description with the wrong magic is refused") {
    check_refused("wrong_magic", {"wrong magic", "0x21212121", "0x4b425446"});
}

TEST_CASE("a plugin for a newer major is refused, with the one it wants and the one there is") {
    check_refused("newer_major", {"newer major", "built for contract 2, this host knows 1"});
}

TEST_CASE("a description smaller than any release wrote is refused") {
    check_refused("too_small", {"wrong size", fmt::format("{} at least", sizeof(flutebook_model))});
}

TEST_CASE("a choice whose range ends between two choices is refused") {
    check_refused("half_a_choice", {"unfit range", "finish does not end at choices"});
}

TEST_CASE("a model that calls itself other than its file is refused") {
    check_refused("wrong_id", {"wrong id", "somebody_else"});
}

TEST_CASE("a model without a function is refused") {
    check_refused("null_evaluate", {"no function", "evaluate is null"});
}

TEST_CASE("a null name is refused, with its place in the list") {
    check_refused("null_name", {"null name", "need 2"});
}

TEST_CASE("a name that is declared twice is refused") {
    check_refused("duplicate_name", {"duplicate name", "order.quantity is declared twice"});
}

TEST_CASE("a unit that nobody knows is refused") {
    check_refused("unknown_unit", {"unknown unit", "web.length", "furrow"});
}

TEST_CASE("a unit that the library would calculate is refused") {
    check_refused("sum_in_a_unit", {"unknown unit", "order.quantity", "1--1"});
    check_refused("number_in_a_unit", {"unknown unit", "order.quantity", "1e308 1e308"});
}

TEST_CASE("a range upside down is refused") {
    check_refused("upside_down_range", {"unfit range", "order.quantity runs from 1 to 0"});
}

TEST_CASE("a default outside its range is refused") {
    check_refused("default_out_of_range", {"default out of range", "price starts at 7", "0 to 5"});
}

TEST_CASE("an axis that this host does not know is refused") {
    check_refused("unknown_axis", {"unknown axis", "order.quantity has 3"});
}

TEST_CASE("a model that requires a later contract is refused, and the message names that contract") {
    check_refused("newer_rules", {"newer rules", "requires contract 1.7, this host knows 1.0", "newer host"});
}

TEST_CASE("a file of the first 1.0 is refused by name, not misread") {
    check_refused("first_release", {"wrong magic", "build it again with the headers of this SDK"});
}

TEST_CASE("a reserved field that is not zero is refused") {
    check_refused("reserved_field", {"unknown field", "a reserved field of fee is 3"});
}

TEST_CASE("a line whose quantity and rate make no money is refused") {
    check_refused("rate_of_no_money", {"no money", "freight is charged in kg, at a rate in money/m2"});
}

TEST_CASE("a usual range outside the range is refused") {
    check_refused("unusual_range", {"unfit range", "price is usually 10 to 200", "within 0 to 100"});
}

TEST_CASE("a setting by the names of no choice is refused") {
    check_refused("keys_of_no_choice", {"unfit keys", "rate varies by choice, and names no choice setting"});
}

TEST_CASE("a choice that is keyed by itself is refused") {
    check_refused("keys_in_a_circle", {"unfit keys", "finish varies by choice, and names no choice setting"});
}

TEST_CASE("a setting may not take the key that names a model's file") {
    check_refused("setting_called_model", {"unfit name", "setting 1 is called 'model'"});
}

TEST_CASE("a setting stepped over a need of another axis is refused") {
    check_refused("steps_of_plies", {"unfit steps", "rate is stepped over need 1"});
}

TEST_CASE("a list longer than memory is refused without being read") {
    check_refused("absurd_count", {"unfit list", "4294967295 needs"});
}

TEST_CASE("a list whose elements overlap is refused") {
    check_refused("absurd_stride", {"unfit list", "2 needs, 1 bytes apart"});
}

TEST_CASE("a list with a null pointer is refused") {
    check_refused("list_of_nothing", {"unfit list", "3 lines"});
}

TEST_CASE("a text that is no UTF-8 is refused") {
    check_refused("broken_text", {"unfit text", "title is not one line of UTF-8"});
}

TEST_CASE("a text without end is refused") {
    check_refused("endless_text", {"long text", "the meaning of order.quantity", "at most 400 bytes"});
}

TEST_CASE("a plugin of a newer minor, all its structs grown, loads and charges what it says") {
    const Trial trial("newer_minor");
    plant::Plant plant = fixture::small_plant();
    plant.folder = FLUTEBOOK_BAD_PLUGINS "/newer_minor";
    plant.models.push_back(fixture::model_entry("newer_minor", {{"price", "0.03"}, {"paper", "waxed"}}));
    const auto engine = engine::Engine::start(plant, FLUTEBOOK_PLUGIN_DIR);
    orders::Request request = fixture::box_request(plant);
    request.colours = 0;  // one folder-gluer is the whole of each route
    const fixture::RowSource source(plant, engine, request);

    const engine::Row& row = source.rows().back();
    REQUIRE(row.order->quantity == 5000);
    std::map<std::pair<std::string, std::size_t>, Money> item;  // by line and step
    const auto full = engine.cost_in_full(row);
    for (const auto& line : full->lines) {
        const contract::Model& model = engine.graph().models[line.model];
        if (model.id == "newer_minor") item[{model.lines[line.line].title, line.step}] = line.amount;
    }
    // 0.03 a box, twice that on waxed paper; 0.25 at the one folder-gluer
    const auto amount = [](std::int64_t count) { return Money::of_ten_thousandths(count); };
    CHECK(item == decltype(item){{{"Labels", 2}, amount(5000 * 600)}, {{"Stamps", 1}, amount(2500)}});
    CHECK(trial.host_lives_on());
}
