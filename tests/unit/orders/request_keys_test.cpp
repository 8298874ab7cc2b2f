// The table of a request's keys, what the reader takes, and what the README says, held to each other.
#include "host/orders/request_keys.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <fstream>
#include <set>
#include <sstream>

#include "host/base/errors.hpp"
#include "host/orders/request.hpp"

using namespace flutebook;
using namespace flutebook::orders;

namespace {

const plant::Plant& plant_of_examples() {
    static const plant::Plant plant = plant::read_plant(FLUTEBOOK_SOURCE_DIR "/config/demo");
    return plant;
}

std::set<std::string> keys_of_table() {
    std::set<std::string> result;
    for (const RequestKey& key : request_keys()) result.insert(key.key);
    return result;
}

using Examples = std::vector<std::pair<std::string, std::string>>;

// A request of the examples of the table, but for `left_out` and with `instead`.
std::vector<std::string> refusals_without(const std::set<std::string>& left_out, const Examples& instead = {}) {
    std::string text;
    for (const RequestKey& key : request_keys()) {
        std::string example = key.example;
        for (const auto& [name, other] : instead)
            if (name == key.key) example = other;
        if (left_out.count(key.key) == 0) text += fmt::format("{}: {}\n", key.key, example);
    }
    try {
        static_cast<void>(read_request(plant_of_examples(), "r.yaml", text, std::nullopt));
    } catch (const InputError& error) {
        return error.lines();
    }
    return {};
}

const std::set<std::string> not_of_every_box = {"outside", "measures", "flutes", "outline"};
const Examples made_on_demo = {{"route", "[FG1]"}};

}  // namespace

TEST_CASE("the table of a request's keys has every key that the reader takes, and no other") {
    const std::vector<std::string> read = keys_that_are_read(plant_of_examples());
    CHECK(std::set<std::string>(read.begin(), read.end()) == keys_of_table());
}

TEST_CASE("a request needs the keys that the table marks, and no other") {
    REQUIRE(refusals_without(not_of_every_box, made_on_demo).empty());
    for (const RequestKey& key : request_keys()) {
        // A box has one of three ways of being measured; the style says which.
        if (not_of_every_box.count(key.key) == 1 || std::string(key.key) == "inside") continue;
        CAPTURE(key.key);
        std::set<std::string> left_out = not_of_every_box;
        left_out.insert(key.key);
        const auto lines = refusals_without(left_out, made_on_demo);
        CHECK(lines.empty() == (key.given == RequestKey::Given::at_will));
        for (const std::string& line : lines)
            CHECK(line.find(fmt::format(": {}: missing", key.key)) != std::string::npos);
    }
}

TEST_CASE("the examples of a request's keys can be written") {
    CHECK(refusals_without({"inside", "measures", "flutes", "outline"}, made_on_demo).empty());
    CHECK(refusals_without({"outside", "flutes", "outline"}, {{"style", "\"0202\""}, {"route", "[FG1]"}}).empty());
    CHECK(refusals_without({"inside", "outside", "measures", "flutes"}, {{"style", "outline"}}).empty());
    CHECK(refusals_without({"outside", "measures", "outline", "route"},
                           {{"style", "\"0110\""}, {"inside", "{length: 400, width: 300}"}})
              .empty());
}

TEST_CASE("the README has a row for each key of a request, as the table has it") {
    std::ostringstream page;
    page << std::ifstream(FLUTEBOOK_SOURCE_DIR "/README.md").rdbuf();
    for (const RequestKey& key : request_keys()) {
        const char* mark = key.given == RequestKey::Given::always ? " *" : "";
        const std::string row =
            fmt::format("\n| `{}`{} | {} | {} | `{}` |\n", key.key, mark, key.says, key.unit, key.example);
        CAPTURE(row);
        CHECK(page.str().find(row) != std::string::npos);
    }
    const std::string text = page.str();
    const std::size_t begin = text.find("| key | says | unit | example |");
    REQUIRE(begin != std::string::npos);
    const std::string table = text.substr(begin, text.find("\n\n", begin) - begin);
    CHECK(static_cast<std::size_t>(std::count(table.begin(), table.end(), '\n')) == request_keys().size() + 1);
}
