// `plugin describe`: the same declarations in four forms, and each of them of use.
#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;
using Json = nlohmann::json;

namespace {

const std::vector<std::string> shipped = {"consumables", "delivery", "energy", "paper",   "run",         "running",
                                          "scrap",       "setup",    "starch", "tooling", "outside-work"};
const std::vector<std::string> examples = {"varnish", "tariff", "small_orders", "emissions", "inspection", "odd_words"};

std::string file_of(const std::string& model) {
    const bool is_shipped = std::find(shipped.begin(), shipped.end(), model) != shipped.end();
    return std::string(is_shipped ? FLUTEBOOK_PLUGIN_DIR : FLUTEBOOK_EXAMPLE_PLUGINS) + "/" + model + ".so";
}

std::vector<std::string> all_models() {
    std::vector<std::string> all = shipped;
    all.insert(all.end(), examples.begin(), examples.end());
    return all;
}

std::string described(const std::string& model, const std::vector<std::string>& options = {}) {
    std::vector<std::string> words = {"plugin", "describe", file_of(model)};
    words.insert(words.end(), options.begin(), options.end());
    const Ended ended = ask(words);
    INFO(model << ": " << ended.errors);
    CHECK(ended.exit_code == 0);
    CHECK(ended.errors.empty());
    return ended.output;
}

// The entry for plugins.yaml, with the lowest allowed value where one must be given.
std::string filled_in(const std::string& model) {
    const Json account = Json::parse(described(model, {"--json"}));
    std::string result = described(model, {"--yaml"});
    for (const Json& setting : account["settings"]) {
        if (!setting["default"].is_null() || setting["varies_by"] != "plant") continue;
        const std::string empty = "      " + setting["name"].get<std::string>() + ":\n";
        const std::size_t at = result.find(empty);
        REQUIRE(at != std::string::npos);
        result.replace(at, empty.size(), empty.substr(0, empty.size() - 1) + " " + setting["low"].dump() + "\n");
    }
    return result;
}

std::string unescaped_bars(const std::string& line) {
    std::string bars;
    for (std::size_t i = 0; i < line.size(); ++i)
        if (line[i] == '|' && (i == 0 || line[i - 1] != '\\')) bars += '|';
    return bars;
}

}  // namespace

TEST_CASE("every name, setting, line and cause of a plugin stands in each form of its description") {
    for (const std::string& model : all_models()) {
        const Json account = Json::parse(described(model, {"--json"}));
        std::vector<std::string> names;
        for (const char* list : {"needs", "provides", "settings"})
            for (const Json& json : account[list]) names.push_back(json["name"]);
        for (const Json& json : account["charges"]) names.push_back(json["line"]);
        for (const Json& json : account["sheds"]) names.push_back(json["cause"]);
        const std::string text = described(model), page = described(model, {"--markdown"});
        for (const std::string& name : names) {
            CHECK_THAT(text, Contains("  " + name));
            CHECK_THAT(page, Contains("| `" + name + "` |"));
        }
        const std::string yaml = described(model, {"--yaml"});
        for (const Json& json : account["settings"]) CHECK_THAT(yaml, Contains(json["name"].get<std::string>() + ":"));
        for (const std::string& line : lines_of(text + yaml))
            if (line.find(".so") == std::string::npos) CHECK(line.size() <= 100);
    }
}

TEST_CASE("a description says where a need comes from and what takes another's place") {
    const Json varnish = Json::parse(described("varnish", {"--json"}));
    CHECK(varnish["needs"][0]["name"] == "run.fed");
    CHECK(varnish["needs"][0]["from"] == "model");
    CHECK(varnish["needs"][1]["from"] == "fact");
    CHECK_THAT(described("small_orders", {"--markdown"}), Contains("in place of the host's own"));
    CHECK_THAT(described("tariff", {"--markdown"}), Contains("in place of what it needs by this name"));
}

TEST_CASE("every fact that a model needs is among those that the host lists, in each form") {
    const Json facts = Json::parse(ask({"plugin", "facts", "--json"}).output)["facts"];
    const std::string text = ask({"plugin", "facts"}).output, page = ask({"plugin", "facts", "--markdown"}).output;
    std::vector<std::string> names, replaceable;
    for (const Json& fact : facts) {
        const std::string name = fact["name"];
        names.push_back(name);
        if (fact["replaceable"]) replaceable.push_back(name);
        CHECK_THAT(text, Contains("  " + name + " "));
        CHECK_THAT(page, Contains("| `" + name + "` | `" + fact["unit"].get<std::string>() + "` |"));
    }
    std::size_t needed = 0;
    for (const std::string& model : all_models()) {
        const Json description = Json::parse(described(model, {"--json"}));
        for (const Json& need : description["needs"]) {
            if (need["from"] != "fact") continue;
            ++needed;
            CHECK(std::count(names.begin(), names.end(), need["name"].get<std::string>()) == 1);
        }
    }
    CHECK(needed > 20);
    CHECK(std::count(replaceable.begin(), replaceable.end(), "step.run_waste") == 1);
    CHECK(std::count(replaceable.begin(), replaceable.end(), "box.area") == 0);
}

TEST_CASE("an entry for plugins.yaml opens a plant once what must be given is filled in") {
    PlantCopy plant;
    std::filesystem::create_directory(plant.folder() + "/plugins");
    std::string file = "plugins:\n";
    for (const std::string& model : all_models()) {
        file += filled_in(model);
        const std::string built = file_of(model);
        if (built.find(FLUTEBOOK_PLUGIN_DIR) == std::string::npos)
            std::filesystem::copy(built, plant.folder() + "/plugins");
    }
    file += "prefer: {energy.power_price: tariff, step.run_waste: small_orders}\n";
    static_cast<void>(plant.write("plugins.yaml", file));
    const Ended ended = ask_at(plant.folder(), {"quote", plant.folder() + "/requests/R-1002-long-run.yaml"});
    // A price of 0 is taken, and told as one that is seldom meant.
    for (const std::string& line : lines_of(ended.errors))
        CHECK_THAT(line, StartsWith("warning: ") && Contains(": unusual: found 0, "));
    CHECK(ended.exit_code == 0);
}

TEST_CASE("an entry that is not filled in is refused for each setting that is required") {
    PlantCopy plant;
    static_cast<void>(
        plant.write("plugins.yaml", "plugins:\n" + described("run", {"--yaml"}) + described("scrap", {"--yaml"})));
    const Ended ended = ask_at(plant.folder(), {"plugin", "list"});
    CHECK(ended.exit_code == 3);
    CHECK_THAT(ended.errors, Contains("plugins.scrap.scrap_price") && Contains("plugins.scrap.handling"));
}

TEST_CASE("what an author writes cannot break the page about it") {
    const std::string page = described("odd_words", {"--markdown"});
    std::string head;
    for (const std::string& line : lines_of(page)) {
        if (line.empty() || line[0] != '|') {
            head.clear();
            continue;
        }
        if (head.empty()) head = unescaped_bars(line);
        CHECK(unescaped_bars(line) == head);
    }
    CHECK_THAT(page, Contains("\\<b\\>\\*not\\*\\</b\\> \\_sheets\\_ \\`code\\` \\[link\\](x) \\# heading"));
    CHECK_THAT(page, Contains("any number") && Contains("on, off or null"));
}

TEST_CASE("what is no plugin is not described") {
    for (const std::string& file : {std::string(FLUTEBOOK_PROGRAM), std::string("/no/such/plugin.so")}) {
        const Ended ended = ask({"plugin", "describe", file});
        CHECK(ended.exit_code == 3);
        CHECK(ended.output.empty());
        CHECK_THAT(ended.errors, Contains(file + ": model "));
        CHECK(lines_of(ended.errors).size() == 1);
    }
}

TEST_CASE("a description has one form at a time") {
    for (const std::vector<std::string>& two :
         {std::vector<std::string>{"--json", "--yaml"}, {"--yaml", "--markdown"}, {"--markdown", "--json"}}) {
        const Ended ended = ask({"plugin", "describe", file_of("run"), two[0], two[1]});
        CHECK(ended.exit_code == 2);
        CHECK_THAT(ended.errors, Contains("excludes"));
    }
}

TEST_CASE("the page of a model that sells something says that recovery is income") {
    CHECK_THAT(described("scrap"),
               Contains("Recovery is income: an order in which such a line is above 0 is refused."));
    CHECK_THAT(described("paper"), !Contains("Recovery"));
}
