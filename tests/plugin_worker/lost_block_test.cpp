// A model whose process ends while it evaluates loses that order only: the host and the next order go on, and no
// process remains.
#include <catch2/catch.hpp>

#include <sys/wait.h>

#include <atomic>
#include <chrono>
#include <csignal>
#include <fstream>
#include <string>
#include <thread>

#include "host/sandbox/build.hpp"
#include "tests/plugin_check/running.hpp"
#include "tests/plugin_worker/workbench.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;
using namespace std::chrono_literals;
using Catch::Matchers::StartsWith;
using engine::Engine;

namespace {

std::string file_of(const std::string& model) {
    return std::string(FLUTEBOOK_UNLUCKY_PLANT) + "/plugins/" + model + ".so";
}

plant::Plant unlucky_plant(const std::string& model) {
    plant::Plant plant = fixture::small_plant();
    plant.folder = FLUTEBOOK_UNLUCKY_PLANT;
    plant.models.push_back(fixture::model_entry(model));
    isolated::isolate(plant, {model});
    return plant;
}

orders::Request box_at(const plant::Plant& plant, const std::vector<double>& quantities) {
    orders::Request result = fixture::box_request(plant);
    result.quantities = quantities;
    return result;
}

// The zombie children of this process.
bool has_children() {
    siginfo_t about{};
    return ::waitid(P_ALL, 0, &about, WEXITED | WNOHANG | WNOWAIT) == 0;
}

// Quotes orders before, at and after the failing one, and checks that no process remains.
void check_loss(const std::string& model, const std::string& what) {
    {
        const plant::Plant plant = unlucky_plant(model);
        const Engine engine = isolated::open(plant);
        const std::string good = isolated::quoted(plant, engine, box_at(plant, {500, 1000}));
        const std::string where = file_of(model) + ": model " + model + ": ";
        CHECK_THAT(good, !StartsWith(where));
        const std::string fault = where + what +
                                  " while it evaluated R-1 at 5000; ask its author, or remove it from "
                                  "plugins.yaml";
        CHECK(isolated::quoted(plant, engine, box_at(plant, {500, 5000, 7000})) == fault);
        CHECK(isolated::quoted(plant, engine, box_at(plant, {500, 1000})) == good);
        CHECK(isolated::quoted(plant, engine, box_at(plant, {5000}), 1) == fault);
        CHECK(isolated::quoted(plant, engine, box_at(plant, {500, 1000})) == good);
    }
    CHECK_FALSE(check::is_running(file_of(model)));
    CHECK_FALSE(has_children());
}

// Plugins mapped into this process. A plugin is loaded from a sealed copy of its file, which has this name.
std::size_t mapped_plugins() {
    std::ifstream maps("/proc/self/maps");
    std::size_t result = 0;
    for (std::string line; std::getline(maps, line);)
        if (line.find("memfd:plugin") != std::string::npos) ++result;
    return result;
}

// Waits for a worker of this model; returns its process number.
pid_t worker_of(const std::string& model) {
    for (int look = 0; look < 1000; ++look) {
        const auto found = check::running(file_of(model));
        if (!found.empty()) return found.front();
        std::this_thread::sleep_for(5ms);
    }
    return -1;
}

}  // namespace

TEST_CASE("a crash loses its own order, by name, and no other") {
#if defined(FLUTEBOOK_SANITIZED)
    check_loss("unlucky_crash", "ended its process with code 1");  // the sanitizer catches the signal
#else
    check_loss("unlucky_crash", "crashed (SIGSEGV)");
#endif
}

TEST_CASE("a hang ends at the deadline and loses its own order") {
    check_loss("unlucky_hang",
               sandbox::slowness == 1 ? "did not come back within 0.2 s" : "did not come back within 2 s");
}

TEST_CASE("a model that ends its process loses its own order") {
    check_loss("unlucky_leave", "ended its process with code 0");
}

TEST_CASE("a model that tries to kill the host is ended") {
    check_loss("unlucky_kill_the_host", "made a system call that no model needs (SIGSYS)");
}

TEST_CASE("a model that overwrites the shared memory is refused for its results, and the host goes on") {
    const plant::Plant plant = unlucky_plant("unlucky_scribble");
    const Engine engine = isolated::open(plant);
    const std::string good = isolated::quoted(plant, engine, box_at(plant, {500, 1000}));
    CHECK_THAT(
        isolated::quoted(plant, engine, box_at(plant, {500, 5000})),
        StartsWith(file_of("unlucky_scribble") +
                   ": model unlucky_scribble: refused a row for a reason it does not declare: found 4008636142"));
    CHECK(isolated::quoted(plant, engine, box_at(plant, {500, 1000})) == good);
}

TEST_CASE("a model that writes a false description while it is loaded is refused, and the host goes on") {
    const plant::Plant plant = unlucky_plant("lies");
    CHECK_THROWS_WITH(isolated::open(plant),
                      file_of("lies") +
                          ": model lies: wrote into the report of its process while it was described; "
                          "ask its author, or remove it from plugins.yaml");
    CHECK_FALSE(check::is_running(file_of("lies")));
}

TEST_CASE("a worker that is killed while it evaluates loses its block") {
    const plant::Plant plant = unlucky_plant("unlucky_hang");
    const Engine engine = isolated::open(plant, 60s);
    std::string said;
    std::atomic<bool> is_said{false};
    std::jthread quoting([&] {
        said = isolated::quoted(plant, engine, box_at(plant, {5000}));
        is_said = true;
    });
    // One that is killed before it evaluates is started anew.
    while (!is_said) {
        std::this_thread::sleep_for(1s);
        for (const pid_t worker : check::running(file_of("unlucky_hang"))) ::kill(worker, SIGKILL);
    }
    quoting.join();
    CHECK(said == file_of("unlucky_hang") +
                      ": model unlucky_hang: was killed (SIGKILL) while it evaluated R-1 at 5000; ask its author, or "
                      "remove it from plugins.yaml");
}

TEST_CASE("a worker that was killed between two orders is replaced, and no order is lost") {
    const plant::Plant plant = unlucky_plant("unlucky_leave");
    const Engine engine = isolated::open(plant);
    const std::string good = isolated::quoted(plant, engine, box_at(plant, {500, 1000}), 1);
    const pid_t first = worker_of("unlucky_leave");
    REQUIRE(::kill(first, SIGKILL) == 0);
    siginfo_t ended{};
    REQUIRE(::waitid(P_PID, static_cast<id_t>(first), &ended, WEXITED | WNOWAIT) == 0);
    CHECK(isolated::quoted(plant, engine, box_at(plant, {500, 1000}), 1) == good);
    CHECK(worker_of("unlucky_leave") != first);
}

TEST_CASE("no code of an isolated model is mapped into the host") {
    const std::size_t before = mapped_plugins();
    plant::Plant plant = unlucky_plant("unlucky_crash");
    std::vector<std::string> all;
    for (const auto& entry : plant.models) all.push_back(entry.id);
    isolated::isolate(plant, all);
    const Engine engine = isolated::open(plant);
    CHECK_THAT(isolated::quoted(plant, engine, box_at(plant, {500})), !Catch::Matchers::Contains("model"));
    CHECK(mapped_plugins() == before);
    plant.isolated.clear();
    const Engine here = isolated::open(plant);
    CHECK(mapped_plugins() > before);
}
