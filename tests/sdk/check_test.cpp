// `plugin check`: the findings in three forms, and how the program ends. What the rules are and what breaks them is
// proven beside the plugins that do.
#include <unistd.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <map>
#include <nlohmann/json.hpp>
#include <regex>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Catch::Matchers::EndsWith;
using Catch::Matchers::StartsWith;
using Json = nlohmann::json;
namespace fs = std::filesystem;

namespace {

std::string check_plugin_file(const std::string& plugin) {
    return std::string(FLUTEBOOK_CHECK_PLUGINS) + "/" + plugin + ".so";
}

Ended check(const std::string& file, const std::vector<std::string>& options = {}) {
    std::vector<std::string> words = {"plugin", "check", file, "--orders", "100"};
    words.insert(words.end(), options.begin(), options.end());
    return ask(words);
}

const Json& rule(const Json& answer, const std::string& id) {
    const Json& all = answer["rules"];
    const auto found = std::find_if(all.begin(), all.end(), [&](const Json& json) { return json["rule"] == id; });
    REQUIRE(found != all.end());
    return *found;
}

// A folder with signs in its name that XML and shells take for their own, and a plugin in it.
class OddPlace {
public:
    OddPlace() : folder_(fs::temp_directory_path() / ("odd & <\"'> " + std::to_string(::getpid()))) {
        fs::create_directory(folder_);
        fs::copy_file(check_plugin_file("two_ends_at_once"), file(), fs::copy_options::overwrite_existing);
    }
    ~OddPlace() { fs::remove_all(folder_); }
    OddPlace(const OddPlace&) = delete;
    OddPlace& operator=(const OddPlace&) = delete;
    [[nodiscard]] std::string file() const { return folder_ / "two_ends_at_once.so"; }

private:
    fs::path folder_;
};

std::string unescaped(std::string text) {
    for (const auto& [entity, sign] : std::vector<std::pair<std::string, std::string>>{
             {"&lt;", "<"}, {"&gt;", ">"}, {"&quot;", "\""}, {"&amp;", "&"}})
        for (auto at = text.find(entity); at != std::string::npos; at = text.find(entity, at + sign.size()))
            text.replace(at, entity.size(), sign);
    return text;
}

// One element of XML as its start tag has it.
struct Element {
    std::string name;
    std::map<std::string, std::string> attributes;
};

// All elements, in their order. The text is well-formed, or the test fails: every tag is closed in its turn, every
// value quoted, and no sign stands bare that must be escaped.
std::vector<Element> elements(const std::string& xml) {
    REQUIRE(xml.rfind("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n", 0) == 0);
    static const std::regex tag(R"re(<(/?)([a-z]+)((?: [a-z]+="(?:[^"&<]|&(?:amp|lt|gt|quot);)*")*)(/?)>)re");
    static const std::regex attribute(R"re( ([a-z]+)="([^"]*)")re");
    static const std::regex between(R"re((?:[^&<>]|&(?:amp|lt|gt|quot);)*)re");
    std::vector<Element> result;
    std::vector<std::string> open;
    auto at = xml.begin() + static_cast<std::ptrdiff_t>(xml.find('\n'));
    for (auto found = std::sregex_iterator(at, xml.end(), tag); found != std::sregex_iterator(); ++found) {
        const std::smatch& one = *found;
        CHECK(std::regex_match(at, one[0].first, between));
        at = one[0].second;
        if (one[1].length() > 0) {
            REQUIRE_FALSE(open.empty());
            CHECK(open.back() == one[2]);
            open.pop_back();
            continue;
        }
        Element element{one[2], {}};
        for (auto item = std::sregex_iterator(one[3].first, one[3].second, attribute); item != std::sregex_iterator();
             ++item)
            CHECK(element.attributes.emplace((*item)[1], unescaped((*item)[2])).second);
        if (one[4].length() == 0) open.push_back(element.name);
        result.push_back(std::move(element));
    }
    CHECK(open.empty());
    CHECK(std::string(at, xml.end()) == "\n");
    return result;
}

std::size_t count(const std::vector<Element>& all, const std::string& name) {
    return static_cast<std::size_t>(
        std::count_if(all.begin(), all.end(), [&](const Element& element) { return element.name == name; }));
}

}  // namespace

TEST_CASE("a plugin that keeps every rule is reported rule by rule, and the exit code is 0") {
    const Ended ended = check(check_plugin_file("good"));
    CHECK(ended.exit_code == 0);
    CHECK(ended.errors.empty());
    CHECK_THAT(ended.output, Contains("holds  evaluate.numbers") && Contains("a row in full blocks takes") &&
                                 EndsWith(" rules, and all hold.\n"));
    for (const std::string& line : lines_of(ended.output))
        if (line.find(".so") == std::string::npos) CHECK(line.size() <= 100);  // a path is not broken
}

TEST_CASE("a broken rule ends the program with 1 and tells what the plugin did, and the command that shows it again") {
    const OddPlace place;
    const Ended ended = check(place.file());
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.output, Contains("broken  fuzz.orders") && Contains("1 broken, 0 not tried.\n"));
    std::smatch again;
    REQUIRE(std::regex_search(ended.output, again, std::regex("again: flutebook (.*) --seed 1 --orders ([0-9]+)\n")));
    CHECK(std::stoi(again[2]) <= 100);
    // As a shell takes it.
    const Ended once_more =
        run({{"/bin/sh", "-c", std::string(FLUTEBOOK_PROGRAM) + " " + again[1].str() + " --orders " + again[2].str()}});
    CHECK(once_more.exit_code == 1);
    CHECK_THAT(once_more.output, Contains("broken  fuzz.orders"));
}

TEST_CASE("a finding is a sentence about what the plugin did, also if the host has its own message for it") {
    CHECK_THAT(check(check_plugin_file("unknown_unit")).output,
               Contains("it is refused by the host: unknown unit: boxes.counted is declared in 'boxfuls'"));
    CHECK_THAT(check(check_plugin_file("changes_locale")).output,
               Contains("it changed the locale from C to C.UTF-8 when it was loaded"));
}

TEST_CASE("the JSON report has each rule, its result and the reason") {
    const Ended ended = check(check_plugin_file("counts_its_calls"), {"--json", "--seed", "3"});
    CHECK(ended.exit_code == 1);
    const Json answer = Json::parse(ended.output);
    CHECK(answer["passed"] == false);
    CHECK(answer["model"] == "counts_its_calls");
    CHECK(answer["seed"] == 3);
    CHECK(answer["orders"] == 100);
    CHECK(answer["sha256"].get<std::string>().size() == 64);
    CHECK(answer["holds"].get<std::size_t>() + answer["broken"].get<std::size_t>() +
              answer["not_tried"].get<std::size_t>() ==
          answer["rules"].size());
    const Json& broken = rule(answer, "evaluate.repeats");
    CHECK(broken["state"] == "broken");
    CHECK(broken["group"] == "evaluate");
    CHECK_THAT(broken["said"].get<std::string>(), StartsWith("gave the rate of boxes of step 0 as "));
    CHECK_THAT(broken["again"].get<std::string>(), EndsWith("counts_its_calls.so --seed 3 --orders 100"));
    CHECK(rule(answer, "evaluate.order")["state"] == "not tried");
    CHECK(rule(answer, "evaluate.order")["said"] == "needs evaluate.repeats");
    CHECK(rule(answer, "evaluate.numbers")["state"] == "holds");
    CHECK(rule(answer, "evaluate.numbers")["again"].is_null());
    for (const auto* figure : {"load_ms", "row_ns", "rows_tried"}) CHECK(answer["figures"][figure] > 0);
}

TEST_CASE("build servers get a test case for each rule, in XML that is well-formed whatever the file is called") {
    const OddPlace place;
    const Ended ended = check(place.file(), {"--junit"});
    CHECK(ended.exit_code == 1);
    const std::vector<Element> all = elements(ended.output);
    REQUIRE(all.size() > 2);
    CHECK(all[0].name == "testsuites");
    CHECK(all[1].name == "testsuite");
    CHECK(all[1].attributes.at("name") == "flutebook plugin check " + place.file());
    CHECK(all[1].attributes.at("tests") == std::to_string(count(all, "testcase")));
    CHECK(all[1].attributes.at("failures") == "1");
    CHECK(count(all, "failure") == 1);
    CHECK(all[1].attributes.at("skipped") == std::to_string(count(all, "skipped")));
    for (const Element& element : all)
        if (element.name == "failure") CHECK_THAT(element.attributes.at("message"), StartsWith("it gave an infinite"));

    const std::vector<Element> crashed = elements(check(check_plugin_file("crashes"), {"--junit"}).output);
    CHECK(count(crashed, "failure") == 1);
    CHECK(count(crashed, "skipped") > 10);
    CHECK(count(elements(check(check_plugin_file("good"), {"--junit"}).output), "failure") == 0);
}

TEST_CASE("the same file, seed and orders give the same findings") {
    const auto findings = [&] {
        Json answer = Json::parse(check(check_plugin_file("two_ends_at_once"), {"--json", "--seed", "9"}).output);
        answer.erase("figures");
        return answer.dump();
    };
    CHECK(findings() == findings());
}

TEST_CASE("a file that is not there is no plugin that failed") {
    const Ended ended = check("/no/such/plugin.so");
    CHECK(ended.exit_code == 3);
    CHECK(ended.output.empty());
    CHECK_THAT(ended.errors, StartsWith("/no/such/plugin.so: model plugin: no such plugin file"));
}

TEST_CASE("a check that is asked for wrongly is refused before anything is loaded") {
    for (const std::vector<std::string>& words :
         std::vector<std::vector<std::string>>{{"plugin", "check"},
                                               {"plugin", "check", check_plugin_file("good"), "--orders", "0"},
                                               {"plugin", "check", check_plugin_file("good"), "--orders", "many"},
                                               {"plugin", "check", check_plugin_file("good"), "--seed", "-1"},
                                               {"plugin", "check", check_plugin_file("good"), "--json", "--junit"}}) {
        const Ended ended = ask(words);
        CHECK(ended.exit_code == 2);
        CHECK(ended.output.empty());
        CHECK(lines_of(ended.errors).size() == 1);
    }
    CHECK_THAT(ask({"plugin", "check", "--help"}).output,
               Contains("Examples:") && Contains("--seed") && Contains("--orders") && Contains("--junit"));
}
