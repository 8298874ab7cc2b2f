// The pages of what the plant has answer what the command line answers, and show no file but the plant's own.
#include <unistd.h>

#include <catch2/catch.hpp>
#include <fstream>
#include <nlohmann/json.hpp>
#include <regex>

#include "tests/system/face.hpp"
#include "tests/web/served.hpp"

using namespace flutebook::fixture;
using Json = nlohmann::ordered_json;

namespace {

struct ServedPlant {
    PlantCopy copy;
    Served served{copy.folder()};
    Browser browser{served};

    [[nodiscard]] std::string command(const std::vector<std::string>& words) const {
        return ask_at(copy.folder(), words).output;
    }
    [[nodiscard]] std::string page(const std::string& target) {
        const Reply reply = browser.get(target);
        REQUIRE(reply.status == 200);
        return reply.body;
    }
};

}  // namespace

TEST_CASE("models, facts and styles answer the documents of the command line") {
    ServedPlant one;
    CHECK(one.browser.get("/models?graph", as_document).body == one.command({"plugin", "graph", "--json"}));
    CHECK(one.browser.get("/facts", as_document).body == one.command({"plugin", "facts", "--json"}));
    CHECK(one.browser.get("/styles", as_document).body == one.command({"style", "list", "--json"}));
    CHECK(one.browser.get("/styles/0201?inside=500x300x200&board=B-140", as_document).body ==
          one.command({"style", "show", "0201", "--inside", "500x300x200", "--board", "B-140", "--json"}));
    CHECK(one.browser.get("/styles/0301?inside=300x200x80&board=B-140&measure.deep=40", as_document).body ==
          one.command({"style", "show", "0301", "--inside", "300x200x80", "--board", "B-140", "--measure", "deep=40",
                       "--json"}));
    CHECK(one.browser.get("/styles/0427?check", as_document).body == one.command({"style", "check", "0427", "--json"}));
}

TEST_CASE("a model's page has each of its settings with the value in force and the line that says it") {
    ServedPlant one;
    const Json starch = Json::parse(one.browser.get("/models/starch", as_document).body);
    CHECK(starch["trust"] == "installed");
    CHECK(starch["isolated"] == false);
    const Json described = Json::parse(one.command({"plugin", "list", "--json"}));
    const std::string page = one.page("/models/starch");
    for (const Json& setting : starch["settings"]) {
        const std::string name = setting["name"];
        INFO(name);
        CHECK(page.find("id=\"setting-" + name + "\"") != std::string::npos);
        for (const Json& value : setting["values"]) {
            if (value["file"].is_null()) continue;
            const std::string line = value["line"].dump(), file = value["file"];
            CHECK(page.find("href=\"/plant/" + file + "#L" + line + "\"") != std::string::npos);
            const Json text = Json::parse(one.browser.get("/plant/" + file, as_document).body);
            CHECK(std::string(text["lines"][value["line"].get<std::size_t>() - 1]).find(name) != std::string::npos);
        }
    }
    CHECK(starch["settings"][0]["values"][0]["value"] == 0.55);
}

TEST_CASE("values that have dates are told with what they count for") {
    PlantCopy copy;
    copy.replace("plugins.yaml", "starch_price: 0.55",
                 "starch_price: [{from: 2020-01-01, value: 0.5}, {from: 2021-01-01, value: 0.6}, "
                 "{from: 2999-01-01, value: 0.7}]");
    Served served{copy.folder()};
    Browser browser{served};
    const Json setting = Json::parse(browser.get("/models/starch", as_document).body)["settings"][0];
    CHECK(setting["since"] == "2021-01-01");
    CHECK(setting["later"] == Json::array({"2999-01-01"}));
    CHECK(setting["values"][0]["value"] == 0.6);
    CHECK(browser.get("/models/starch").body.find("since 2021-01-01, another from 2999-01-01") != std::string::npos);
}

TEST_CASE(
    "a model that was tried here, and works in a process of its own, says so and replaces what the plant prefers") {
    PlantCopy copy;
    copy.take_house_rule();
    Served served{copy.folder()};
    Browser browser{served};
    const Json model = Json::parse(browser.get("/models/houserule", as_document).body);
    CHECK(model["trust"] == "tried");
    CHECK(model["isolated"] == true);
    CHECK(browser.get("/models/houserule").body.find("works in a process of its own") != std::string::npos);
    const std::string list = browser.get("/models").body;
    CHECK(std::regex_search(list,
                            std::regex("<li><code>step.run_waste</code> is taken from <a href=\"/models/"
                                       "houserule\">houserule</a>: <a class=\"place\" href=\"/plant/plugins.yaml#L")));
}

TEST_CASE("the graph names every need and every provide of the models, and leads from each model to its neighbours") {
    ServedPlant one;
    const Json graph = Json::parse(one.browser.get("/models?graph", as_document).body);
    const std::string page = one.page("/models");
    const auto row = [&](const std::string& id) {
        const std::size_t begin = page.find("id=\"graph-" + id + "\"");
        REQUIRE(begin != std::string::npos);
        return page.substr(begin, page.find("</tr>", begin) - begin);
    };
    for (const Json& model : graph["models"]) {
        const std::string text = row(model["id"]);
        for (const Json& need : model["needs"]) {
            CHECK(text.find("<code>" + std::string(need["from"]["name"]) + "</code>") != std::string::npos);
            if (!need["from"]["model"].is_null())
                CHECK(text.find("href=\"/models/" + std::string(need["from"]["model"]) + "\"") != std::string::npos);
        }
        for (const Json& provide : model["provides"])
            for (const Json& taker : provide["to"])
                if (taker != "host")
                    CHECK(text.find("href=\"/models/" + std::string(taker) + "\"") != std::string::npos);
    }
}

TEST_CASE("the plant's files are shown as they were read, also once they are others, which is told") {
    ServedPlant one;
    const Json before = Json::parse(one.browser.get("/plant", as_document).body);
    REQUIRE(before["files"].size() == 6);
    for (const Json& file : before["files"]) CHECK(file["changed"].is_null());
    const std::string was = one.browser.get("/plant/machines.yaml", as_document).body;
    one.copy.replace("machines.yaml", "Two corrugators", "Three corrugators");
    Json now;
    do now = Json::parse(one.browser.get("/plant/machines.yaml", as_document).body);
    while (now["changed"].is_null());
    CHECK(now["lines"] == Json::parse(was)["lines"]);
    CHECK(std::string(now["lines"][0]).find("Two corrugators") != std::string::npos);
    CHECK(one.page("/plant/machines.yaml").find("id=\"changed\"") != std::string::npos);
    CHECK(one.page("/plant").find("changed at ") != std::string::npos);
}

TEST_CASE("no address shows a file that the plant was not read from") {
    ServedPlant one;
    one.copy.write("secret.yaml", "a secret of somebody");
    REQUIRE(::symlink("/etc/passwd", (one.copy.folder() + "/styles.yaml").c_str()) == 0);
    REQUIRE(::symlink("secret.yaml", (one.copy.folder() + "/linked.yaml").c_str()) == 0);
    for (const std::string& name :
         {std::string("secret.yaml"), std::string("linked.yaml"), std::string("styles.yaml"), std::string("ledger.db"),
          std::string(".."), std::string("%2e%2e"), std::string("%2E%2E%2Fsecret.yaml"),
          std::string("..%2f..%2fetc%2fpasswd"), std::string("../machines.yaml"), std::string("./machines.yaml"),
          std::string("%2e/machines.yaml"), std::string("%2fetc%2fpasswd"), std::string("/etc/passwd"),
          encoded(one.copy.folder() + "/machines.yaml"), std::string("machines.yaml%00"), std::string("machines.yaml/"),
          std::string("requests"), std::string("requests%2fR-1001-everyday-box.yaml"), std::string("MACHINES.YAML")}) {
        INFO(name);
        const Reply reply = one.browser.get("/plant/" + name);
        CHECK((reply.status == 404 || reply.status == 400));
        for (const char* inside : {"a secret of somebody", "root:", "corrugators:"})
            CHECK(reply.body.find(inside) == std::string::npos);
    }
}

TEST_CASE("each place that stands behind a figure leads to a line that is there") {
    ServedPlant one;
    const std::string page =
        one.page("/quotes/new?line=" + encoded("0201 400x300x250 B-140 500 2c 18%") + "&explain=starch");
    const std::regex link("<a class=\"place\" href=\"/plant/([a-z.]+)#L([0-9]+)\">([a-z.]+):([0-9]+)");
    std::size_t links = 0;
    for (std::sregex_iterator at(page.begin(), page.end(), link), end; at != end; ++at, ++links) {
        CHECK((*at)[1] == (*at)[3]);
        CHECK((*at)[2] == (*at)[4]);
        const Json file = Json::parse(one.browser.get("/plant/" + (*at)[1].str(), as_document).body);
        CHECK(file["lines"].size() >= std::stoul((*at)[2]));
    }
    CHECK(links > 5);
    // No place stands there as a plain text.
    const std::regex place("[a-z]+[.]yaml:[0-9]+:[0-9]+");
    CHECK(static_cast<std::size_t>(std::distance(std::sregex_iterator(page.begin(), page.end(), place), {})) == links);
}

TEST_CASE("a number of the plant that is doubtful is told beside its files, with the line where it stands") {
    PlantCopy copy;
    copy.replace("plugins.yaml", "power_price: 0.148", "power_price: 14.8");
    Served served{copy.folder()};
    Browser browser{served};
    const std::string page = browser.get("/plant").body;
    CHECK(page.find("<a class=\"place\" href=\"/plant/plugins.yaml#L21\">plugins.yaml:21:46</a>: ") !=
          std::string::npos);
    CHECK(page.find(copy.folder()) == std::string::npos);
    const Json warnings = Json::parse(browser.get("/plant", as_document).body)["warnings"];
    REQUIRE(warnings.size() == 1);
    CHECK(warnings[0]["at"] == "plugins.yaml:21:46");
}

TEST_CASE(
    "a style's size that cannot be drawn is told beside the form, and as a refusal where the document is asked for") {
    ServedPlant one;
    CHECK(one.page("/styles/0201?inside=400x300&board=B-140").find("inside: a box has three dimensions") !=
          std::string::npos);
    CHECK(one.browser.get("/styles/0201?inside=400x300&board=B-140", as_document).status == 422);
    CHECK(one.browser.get("/styles/0201?inside=400x300x250", as_document).body.find("board: is missing") !=
          std::string::npos);
    CHECK(one.browser.get("/styles/0201", as_document).status == 200);
    CHECK(one.browser.get("/styles/none", as_document).status == 404);
}

TEST_CASE("the guides of the sources are served whole, and every page leads to them") {
    ServedPlant one;
    const Json list = Json::parse(one.browser.get("/guide", as_document).body);
    CHECK(list["guides"].size() == 5);
    for (const Json& guide : list["guides"]) {
        const std::string name = guide["name"];
        const std::string text = run({{"/bin/cat", FLUTEBOOK_SOURCE_DIR "/config/guide/" + name + ".md"}}).output;
        CHECK(std::string(Json::parse(one.browser.get("/guide/" + name, as_document).body)["text"]) == text);
        CHECK(one.page("/guide/" + name).find("<h1>" + std::string(guide["title"]) + "</h1>") != std::string::npos);
    }
    for (const char* target : {"/quotes", "/models", "/plant", "/guide/keeper"})
        CHECK(one.page(target).find("<a href=\"/guide\"") != std::string::npos);
    CHECK(one.browser.get("/guide/none").status == 404);
}
