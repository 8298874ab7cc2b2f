// JSON as bytes.
#include "host/answers/json_text.hpp"

#include <rapidcheck.h>

#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <nlohmann/json.hpp>

using flutebook::answers::Json;
using flutebook::answers::json_text;

TEST_CASE("numbers are the shortest that read back, whole ones without a point") {
    CHECK(json_text(Json{{"a", 0.1}, {"b", 12.0}, {"c", 0.3 - 0.1}, {"d", 3}, {"e", 1e-9}}) ==
          "{\"a\": 0.1, \"b\": 12, \"c\": 0.19999999999999998, \"d\": 3, \"e\": 1e-09}\n");
}

TEST_CASE("every double reads back as itself") {
    CHECK(rc::check("doubles", [](std::uint64_t bits) {
        double number = 0;
        std::memcpy(&number, &bits, sizeof number);
        if (!std::isfinite(number)) return;
        const Json back = Json::parse(json_text(Json{number}));
        RC_ASSERT(back[0].get<double>() == number);
    }));
}

TEST_CASE("what is no number is null") {
    CHECK(json_text(Json{{"a", std::numeric_limits<double>::quiet_NaN()}}) == "{\"a\": null}\n");
}

TEST_CASE("plain values stand on one line, what holds more is broken, keys keep their order") {
    Json tree;
    tree["z"] = Json::array({1, 2});
    tree["a"] = {{"x", nullptr}};
    CHECK(json_text(tree) == "{\n  \"z\": [1, 2],\n  \"a\": {\"x\": null}\n}\n");
    CHECK(json_text(Json::array()) == "[]\n");
    CHECK(json_text(Json::object()) == "{}\n");
}

TEST_CASE("text is escaped, and bytes that are not UTF-8 are replaced") {
    CHECK(json_text(Json{"a\"b\n\x1b"}) == "[\"a\\\"b\\n\\u001b\"]\n");
    CHECK(json_text(Json{std::string("a\xff")}) == "[\"a\xef\xbf\xbd\"]\n");
    CHECK(json_text(Json{{"k\"", 1}}) == "{\"k\\\"\": 1}\n");
}

TEST_CASE("a list that is written item by item has the bytes of the whole tree") {
    Json tree = {{"name", "x"}, {"items", Json::array()}};
    flutebook::answers::JsonListStream stream(tree);
    CHECK(stream.begin() + stream.end() == json_text(tree));
    std::string written = stream.begin();
    for (const int number : {1, 2, 3}) {
        const Json item = {{"number", number}, {"parts", {{{"a", 1}}, {{"b", nullptr}}}}};
        written += stream.add(item);
        tree["items"].push_back(item);
        CHECK(written + stream.end() == json_text(tree));
    }
}
