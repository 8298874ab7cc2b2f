// Models that a plant has work in processes of their own: the same answers, and one that dies of an order costs it
// alone.
#include <catch2/catch.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <csignal>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <thread>

#include "host/contract/plugin_file.hpp"
#include "host/sandbox/child.hpp"
#include "host/sandbox/watch.hpp"
#include "tests/plugin_check/running.hpp"
#include "tests/system/face.hpp"

using namespace flutebook;
using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;

namespace {

// A line at the end of plugins.yaml, so that no other line moves.
void append(PlantCopy& plant, const std::string& line) {
    plant.replace("plugins.yaml", "drop_price: 28}", "drop_price: 28}\n" + line);
}

void isolate(PlantCopy& plant, const std::string& models) {
    append(plant, fmt::format("isolation: {{{}}}", models));
}

// Lists a plugin that misbehaves at 5000 boxes; its file in the plant's folder.
std::string take_unlucky(PlantCopy& plant, const std::string& model) {
    const std::filesystem::path item = std::filesystem::path(plant.folder()) / "plugins" / (model + ".so");
    std::filesystem::create_directory(item.parent_path());
    std::filesystem::copy_file(std::string(FLUTEBOOK_UNLUCKY) + "/" + model + ".so", item);
    plant.replace("plugins.yaml", "  - run: {}", "  - run: {}\n  - " + model + ": {}");
    return item.string();
}

// Whether a worker has the plugin's file, and not only the process that describes it.
bool is_at_work(const std::string& file) {
    const auto workers = check::running("inner:work");
    const auto with_file = check::running(file);
    return std::any_of(workers.begin(), workers.end(), [&](pid_t worker) {
        return std::find(with_file.begin(), with_file.end(), worker) != with_file.end();
    });
}

}  // namespace

TEST_CASE("a plant that isolates models answers byte for byte as one that does not") {
    PlantCopy plant;
    plant.take_house_rule();
    const std::vector<std::string> request = {demo_request("R-1001"), demo_request("R-1007")};
    const auto quoted = [&](const std::vector<std::string>& options) {
        std::vector<std::string> words = {"quote", request[0], request[1]};
        words.insert(words.end(), options.begin(), options.end());
        const Ended ended = ask_at(plant.folder(), words);
        CHECK(ended.errors.empty());
        return ended.output;
    };
    const std::vector<std::vector<std::string>> ways = {
        {"--json", "--threads", "1"}, {"--threads", "8"}, {"--explain", "starch"}, {"--explain", "setup.labour"}};
    std::vector<std::string> here;
    for (const auto& way : ways) here.push_back(quoted(way));

    const std::string rule = plant.folder() + "/plugins/houserule.so";
    isolate(plant, "houserule: process, run: process, starch: process, setup: process");
    append(plant, fmt::format("sha256: {{houserule: {}}}", contract::PluginFile::read(rule).sha256()));
    for (std::size_t way = 0; way < ways.size(); ++way) CHECK(quoted(ways[way]) == here[way]);
    CHECK_FALSE(check::is_still_running(rule));
}

TEST_CASE("a pin that does not fit refuses an isolated plugin as any other") {
    PlantCopy plant;
    isolate(plant, "paper: process");
    append(plant, fmt::format("sha256: {{paper: {:0>64}}}", ""));
    const Ended ended = ask_at(plant.folder(), {"plugin", "list"});
    CHECK(ended.exit_code == 3);
    CHECK_THAT(ended.errors, Contains("sha256.paper: ") && Contains("is another file"));
}

TEST_CASE("an isolated plugin that crashes costs the request that it crashed in, by name, and no other") {
    PlantCopy plant;
    const std::string file = take_unlucky(plant, "unlucky_crash");  // apart, because it was not built with the program
    const std::string bad = plant.write("bad.yaml", plain_request("E-1", "500, 5000"));
    const std::string good = plant.write("good.yaml", plain_request("E-2", "500, 4000"));
    const Ended ended = ask_at(plant.folder(), {"quote", bad, good, "--json"});
    CHECK(ended.exit_code == 3);
    CHECK_THAT(ended.errors,
               StartsWith(file + ": model unlucky_crash: ") && Contains(" while it evaluated E-1 at 5000; "));
    CHECK(lines_of(ended.errors).size() == 1);
    const auto requests = nlohmann::json::parse(ended.output)["requests"];
    REQUIRE(requests.size() == 2);
    CHECK(requests[0].contains("fault"));
    CHECK(requests[1]["quotes"].size() == 2);
    CHECK_FALSE(check::is_still_running(file));
}

TEST_CASE("workers end when the host is killed in the middle of its work") {
    PlantCopy plant;
    const std::string file = take_unlucky(plant, "unlucky_hang");
    const std::string bad = plant.write("bad.yaml", plain_request("E-1", "5000"));
    // Its record, so that the trial is not what is found running.
    REQUIRE(ask_at(plant.folder(), {"plugin", "list"}).exit_code == 0);
    sandbox::Child host(FLUTEBOOK_PROGRAM, {"--plant", plant.folder(), "quote", bad}, {});
    while (!host.ended() && !is_at_work(file)) std::this_thread::sleep_for(std::chrono::milliseconds(5));
    REQUIRE(is_at_work(file));
    CHECK(host.finish().signal == SIGKILL);  // and its group, of which workers are none
    CHECK_FALSE(check::is_still_running(file));
}

TEST_CASE("the list of plugins says which work in processes of their own") {
    PlantCopy plant;
    isolate(plant, "paper: process");
    const Ended text = ask_at(plant.folder(), {"plugin", "list"});
    const std::string works = "  works    in a process of its own\n";
    const std::size_t paper = text.output.find("\npaper 1.");
    CHECK(text.output.find(works) == text.output.rfind(works));
    CHECK(text.output.find(works) > paper);
    CHECK(text.output.find(works) < text.output.find("\n\n", paper));
    const auto list = nlohmann::json::parse(ask_at(plant.folder(), {"plugin", "list", "--json"}).output)["plugins"];
    for (const auto& item : list) CHECK(item["isolated"] == (item["id"] == "paper"));
}

TEST_CASE("a plugin that was not built with the program works in a process of its own, unless the plant says host") {
    const auto is_isolated = [](PlantCopy& plant) {
        const auto list = nlohmann::json::parse(ask_at(plant.folder(), {"plugin", "list", "--json"}).output)["plugins"];
        std::string result;
        for (const auto& item : list)
            if (item["isolated"]) result += item["id"].get<std::string>() + " ";
        return result;
    };
    PlantCopy plant;
    plant.take_house_rule();
    CHECK(is_isolated(plant) == "houserule ");
    isolate(plant, "houserule: host");
    CHECK(is_isolated(plant).empty());
}

#if !defined(FLUTEBOOK_SANITIZED)
TEST_CASE("a model that crashes in the host's own process is named") {
    PlantCopy plant;
    const std::string file = take_unlucky(plant, "unlucky_crash");
    isolate(plant, "unlucky_crash: host");
    const std::string bad = plant.write("bad.yaml", plain_request("E-1", "500, 5000"));
    for (const char* threads : {"1", "2"}) {
        const Ended ended = ask_at(plant.folder(), {"quote", bad, "--threads", threads});
        CHECK(ended.exit_code == 3);
        CHECK(ended.errors == "flutebook: " + file +
                                  ": model unlucky_crash: crashed (SIGSEGV) while it evaluated in this program's own "
                                  "process; remove it from plugins.yaml, or isolate it\n");
    }
}

TEST_CASE("a model that hangs in the host's own process is named when the program is stopped") {
    using namespace std::chrono_literals;
    PlantCopy plant;
    const std::string file = take_unlucky(plant, "unlucky_hang");
    isolate(plant, "unlucky_hang: host");
    const std::string bad = plant.write("bad.yaml", plain_request("E-1", "5000"));
    REQUIRE(ask_at(plant.folder(), {"plugin", "list"}).exit_code == 0);  // tried before
    const sandbox::WatchedEnd ended = sandbox::run_watched(
        "/usr/bin/timeout", {"-s", "TERM", "5", FLUTEBOOK_PROGRAM, "--plant", plant.folder(), "quote", bad}, 0,
        [](const sandbox::ChildMessage&) {}, {60s, 60s, std::size_t{1} << 30});
    CHECK_THAT(ended.printed,
               StartsWith("flutebook: " + file + ": model unlucky_hang: was stopped (SIGTERM) while it evaluated"));
}
#endif
