// What the command line says about itself, and to whoever gets it wrong.
#include <catch2/catch.hpp>

#include "host/orders/request_keys.hpp"
#include "tests/system/face.hpp"

using namespace flutebook;
using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Catch::Matchers::EndsWith;
using Catch::Matchers::StartsWith;

namespace {

// What stands first on each line under a help's "Commands:".
std::vector<std::string> commands_in(const std::string& help) {
    std::vector<std::string> result;
    bool is_there = false;
    for (const std::string& line : lines_of(help)) {
        if (is_there && line.empty()) break;
        if (is_there) result.push_back(line.substr(2, line.find(' ', 2) - 2));
        is_there = is_there || line == "Commands:";
    }
    return result;
}

// Its own, and that of every command below it. How many there were.
std::size_t check_help(const std::vector<std::string>& words) {
    std::string name = "flutebook";
    for (const std::string& word : words) name += " " + word;
    std::vector<std::string> asked = words;
    asked.push_back("--help");
    const Ended help = ask(asked);
    INFO(name);
    CHECK(help.exit_code == 0);
    CHECK(help.errors.empty());
    CHECK_THAT(help.output, Contains("Usage: " + name + " ["));
    CHECK_THAT(help.output, Contains("\nExamples:\n  flutebook "));
    for (const std::string& line : lines_of(help.output)) CHECK(line.size() <= 100);
    std::size_t count = 1;
    for (const std::string& command : commands_in(help.output)) {
        std::vector<std::string> below = words;
        below.push_back(command);
        count += check_help(below);
    }
    return count;
}

}  // namespace

TEST_CASE("help of every command shows an example, fits the page and ends with 0") {
    CHECK(check_help({}) >= 19);
}

TEST_CASE("the help of `quote` has every key of a request with its example, on lines of at most 80 columns") {
    const std::string help = ask({"quote", "--help"}).output;
    const std::size_t begin = help.find("A request is a YAML file with these keys");
    REQUIRE(begin != std::string::npos);
    const std::string keys = help.substr(begin);
    for (const orders::RequestKey& key : orders::request_keys())
        CHECK_THAT(keys, Contains(std::string(key.key) + ": " + key.example + "\n"));
    for (const std::string& line : lines_of(keys)) CHECK(line.size() <= 80);
}

TEST_CASE("the commands of an example in the help work as they stand") {
    Child child{
        {FLUTEBOOK_PROGRAM, "--plant", "config/demo", "quote", "config/demo/requests/R-1001-everyday-box.yaml"}};
    child.folder = FLUTEBOOK_SOURCE_DIR;
    CHECK_THAT(ask({"quote", "--help"}).output,
               Contains("flutebook --plant config/demo quote config/demo/requests/R-1001-everyday-box.yaml"));
    CHECK(run(child).exit_code == 0);
}

TEST_CASE("the version is printed on one line") {
    const Ended version = ask({"--version"});
    CHECK(version.exit_code == 0);
    CHECK_THAT(version.output, Catch::Matchers::Matches("flutebook [0-9]+\\.[0-9]+\\.[0-9]+\n"));
}

TEST_CASE("wrong usage ends with 2, one line on standard error and nothing on standard output") {
    struct Wrong {
        std::vector<std::string> words;
        std::string complaint;
    };
    const std::vector<Wrong> all = {
        {{}, "flutebook: a command is missing; see `flutebook --help`"},
        {{"plugin"}, "flutebook plugin: a command is missing; see `flutebook plugin --help`"},
        {{"qoute", "a.yaml"}, "flutebook: no such command: `qoute`; did you mean `quote`; see `flutebook --help`"},
        {{"plugin", "grpah"},
         "flutebook plugin: no such command: `grpah`; did you mean `graph`; see `flutebook plugin --help`"},
        {{"--treads", "2"}, "flutebook: no such option: `--treads`; see `flutebook --help`"},
        {{"quote"}, "flutebook quote: WHAT is required; see `flutebook quote --help`"},
        {{"quote", "show", "Q000001", "Q000002"},
         "flutebook quote show: not for a saved quote: `Q000002`; see `flutebook quote show --help`"},
        {{"quote", "recheck", "Q000001", "--date", "2026-02-30"},
         "flutebook quote recheck: --date: is not a day: `2026-02-30`; write YYYY-MM-DD; see `flutebook quote recheck "
         "--help`"},
        {{"quote", "recheck", "Q000001", "--save"},
         "flutebook quote recheck: not for a saved quote: --save; see `flutebook quote recheck --help`"},
        {{"quote", "list", "--size", "400x300", "--within", "much"},
         "flutebook quote list: --within: is not a tolerance: `much`; write a share of each length like 5%, or a "
         "length "
         "like 10 (mm) or 0.5in; see `flutebook quote list --help`"},
        {{"quote", "list", "--within", "5%"},
         "flutebook quote list: --within: goes with --size; see `flutebook quote list --help`"},
        {{"quote", "mark", "Q000001", "perhaps"},
         "flutebook quote mark: STATE: is not a state: `perhaps`; write won, lost or open; see `flutebook quote mark "
         "--help`"},
        {{"quote", "--explain", "price", "show", "Q000001"},
         "flutebook quote show: not for a saved quote: --explain; see `flutebook quote show --help`"},
        {{"order", "cost", "26-0417", "26-0418"},
         "flutebook order cost: not for the cost of an order: `26-0418`; see `flutebook order cost --help`"},
        {{"order", "Q000001", "0x10"},
         "flutebook order: QUANTITY: is no quantity: `0x10`; give a whole number from 1 on; "
         "see `flutebook order --help`"},
        {{"quote", "a.yaml", "--threads", "0"},
         "flutebook quote: --threads: is no number of threads: `0`; give a whole number from 1 to 256; "
         "see `flutebook quote --help`"},
        {{"quote", "a.yaml", "--threads", "-1"},
         "flutebook quote: --threads: is no number of threads: `-1`; give a whole number from 1 to 256; "
         "see `flutebook quote --help`"},
        {{"quote", "a.yaml", "--date", "2026-02-30"},
         "flutebook quote: --date: is not a day: `2026-02-30`; write YYYY-MM-DD; see `flutebook quote --help`"},
        {{"quote", "a.yaml", "--explain"}, "flutebook quote: --explain: has no value; see `flutebook quote --help`"},
        {{"--plant", "a", "--plant", "b", "plugin", "list"},
         "flutebook plugin list: --plant: is given more than once; see `flutebook plugin list --help`"},
    };
    for (const Wrong& wrong : all) {
        const Ended ended = ask(wrong.words);
        CHECK(ended.exit_code == 2);
        CHECK(ended.output.empty());
        CHECK(lines_of(ended.errors) == std::vector<std::string>{wrong.complaint});
    }
}

TEST_CASE("the plant's folder may stand before or after the command") {
    const Ended before = ask({"--plant", demo_plant(), "plugin", "list"});
    const Ended after = ask({"plugin", "list", "--plant", demo_plant()});
    CHECK(before.exit_code == 0);
    CHECK(before.output == after.output);
}

TEST_CASE("without --plant the current folder is used") {
    Child child{{FLUTEBOOK_PROGRAM, "plugin", "list"}};
    child.folder = demo_plant();
    CHECK(run(child).output == ask_at(demo_plant(), {"plugin", "list"}).output);
}
