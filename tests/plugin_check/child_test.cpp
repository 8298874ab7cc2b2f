// Child processes: the descriptors that they receive, and that none outlives its parent.
#include <fcntl.h>
#include <unistd.h>

#include <catch2/catch.hpp>

#include <chrono>
#include <csignal>
#include <optional>
#include <system_error>
#include <thread>

#include "host/sandbox/child.hpp"
#include "host/sandbox/watch.hpp"
#include "tests/plugin_check/running.hpp"

using namespace flutebook::sandbox;
using namespace std::chrono_literals;
using flutebook::check::is_running;
using flutebook::check::is_still_running;

namespace {

constexpr const char* shell = "/bin/sh";

void wait_until(const std::string& word) {
    for (int look = 0; look < 200 && !is_running(word); ++look) std::this_thread::sleep_for(20ms);
}

class Pipe {
public:
    Pipe() {
        if (::pipe2(ends_, O_CLOEXEC) != 0) throw std::system_error(errno, std::generic_category());
    }
    ~Pipe() {
        ::close(ends_[0]);
        ::close(ends_[1]);
    }
    Pipe(const Pipe&) = delete;
    Pipe& operator=(const Pipe&) = delete;
    [[nodiscard]] int reading() const { return ends_[0]; }
    [[nodiscard]] int writing() const { return ends_[1]; }

private:
    int ends_[2] = {-1, -1};
};

}  // namespace

TEST_CASE("a child that is finished takes everything it started with it") {
    const std::string mark = "98761.25";  // a length of sleep that no other test uses
    Child child(shell, {"-c", "sleep " + mark + " & (sleep " + mark + " & wait) & sleep " + mark + "; true"}, {});
    wait_until(mark);
    REQUIRE(is_running(mark));
    CHECK(child.finish().signal == SIGKILL);
    CHECK_FALSE(is_still_running(mark));
}

TEST_CASE("what a child leaves behind when it ends by itself is killed as well") {
    const std::string mark = "98762.25";
    Child child(shell, {"-c", "sleep " + mark + " & exit 7"}, {});
    while (!child.ended()) std::this_thread::sleep_for(10ms);
    CHECK(child.ended()->code == 7);
    CHECK(child.finish().code == 7);
    CHECK(child.finish().code == 7);
    CHECK_FALSE(is_still_running(mark));
}

TEST_CASE("a child that goes out of scope is gone") {
    const std::string mark = "98763.25";
    {
        const Child child(shell, {"-c", "sleep " + mark + "; true"}, {});
        wait_until(mark);
        REQUIRE(is_running(mark));
    }
    CHECK_FALSE(is_still_running(mark));
}

TEST_CASE("a child gets its descriptors in order, and no others") {
    const Pipe first;
    const Pipe second;
    std::vector<std::string> heard;
    Listener listener([&](const ChildMessage& said) { heard.push_back(said.word + " " + said.text); });
    Child child(
        shell,
        {"-c", "echo second >&4; for at in 3 4 5 6 7 8 9; do ( : >&$at ) && echo open $at >&3; done; echo end >&3"},
        {first.writing(), second.writing()});
    const Stopped stopped = watch(child, first.reading(), listener, {20s, 20s, std::size_t{1} << 30});
    CHECK(stopped == Stopped::by_itself);
    CHECK(heard == std::vector<std::string>{"open 3", "open 4", "end "});
    std::string word(6, ' ');
    CHECK(::read(second.reading(), word.data(), word.size()) == 6);
    CHECK(word == "second");
}

TEST_CASE("a child that says nothing for too long is killed, and one that goes on for too long as well") {
    const Pipe report;
    Listener listener([](const ChildMessage&) {});
    const std::string mark = "98764.25";
    Child silent(shell, {"-c", "sleep " + mark + "; true"}, {report.writing()});
    CHECK(watch(silent, report.reading(), listener, {20s, 200ms, std::size_t{1} << 30}) == Stopped::out_of_time);
    Child talks(shell, {"-c", "while :; do echo " + mark + " >&3; sleep 0.05; done"}, {report.writing()});
    CHECK(watch(talks, report.reading(), listener, {400ms, 20s, std::size_t{1} << 30}) == Stopped::out_of_time);
    CHECK_FALSE(is_still_running(mark));
}

TEST_CASE("time in which a child waits for a processor that others use does not count against it, and a hang does") {
    // Three that never rest on one processor: each has a third of the time.
    const std::string spin = "exec taskset -c 0 sh -c 'while :; do :; done'";
    const Child one(shell, {"-c", spin}, {});
    const Child other(shell, {"-c", spin}, {});
    const Pipe report;
    Listener listener([](const ChildMessage&) {});
    const auto begun = std::chrono::steady_clock::now();
    Child hangs(shell, {"-c", spin}, {report.writing()});
    CHECK(watch(hangs, report.reading(), listener, {400ms, 400ms, std::size_t{1} << 30}) == Stopped::out_of_time);
    CHECK(std::chrono::steady_clock::now() - begun > 700ms);
}

TEST_CASE("a child tells which of its threads can run, and for how long each has run") {
    const Child spins(shell, {"-c", "while :; do :; done"}, {});
    const Child sleeps(shell, {"-c", "exec sleep 98766.25"}, {});
    std::this_thread::sleep_for(1s);
    REQUIRE(spins.activity().size() == 1);
    CHECK(spins.activity().begin()->second.is_runnable);
    REQUIRE(sleeps.activity().size() == 1);
    CHECK_FALSE(sleeps.activity().begin()->second.is_runnable);
    CHECK(spins.activity().begin()->second.ran > sleeps.activity().begin()->second.ran);
    Child ends(shell, {"-c", "true"}, {});
    ends.finish();
    CHECK(ends.activity().empty());
}

TEST_CASE("a child that cannot be started says so") {
    CHECK_THROWS_AS(Child("/no/such/program", {}, {}), std::system_error);
}

TEST_CASE("a child has a session of its own, without a terminal") {
    Child child(shell, {"-c", "sleep 98765.25; true"}, {});
    CHECK(::getsid(child.id()) == child.id());
    CHECK(::getpgid(child.id()) == child.id());
}

TEST_CASE("what a child prints is caught, up to a limit") {
    const auto printed = [](const std::string& script) {
        return run_watched(shell, {"-c", script}, 0, [](const ChildMessage&) {}, {20s, 20s, std::size_t{1} << 30})
            .printed;
    };
    CHECK(printed("true").empty());
    CHECK(printed("echo out; echo err >&2") == "out\nerr\n");
    CHECK(printed("yes | head -c 1000000").size() == 200);
}
