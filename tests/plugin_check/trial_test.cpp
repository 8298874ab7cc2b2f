// What the check in a child process finds in plugins that would harm the host, and in the host's own models.
#include <fmt/format.h>
#include <catch2/catch.hpp>

#include <sys/resource.h>
#include <sys/syscall.h>
#include <unistd.h>

#include <chrono>
#include <filesystem>
#include <set>
#include <utility>

#include "host/plugin_check/trial.hpp"
#include "host/sandbox/build.hpp"
#include "host/sandbox/child.hpp"
#include "tests/plugin_check/running.hpp"

using namespace flutebook;
using namespace flutebook::plugin_check;
using namespace flutebook::sandbox;
using namespace std::chrono_literals;
using check::plugin;

namespace {

constexpr std::size_t most_resident = (std::size_t{256} << 20) + kept_when_freed;

// `silence` is of a child's own time: what others on this machine take of it does not count.
CheckFindings tried(const std::string& file, std::chrono::seconds silence = 3s * slowness) {
    TrialRequest asked = asked_for_trust(FLUTEBOOK_PROGRAM);
    asked.limits.whole = 30s * slowness;
    asked.limits.silence = silence;
    asked.limits.resident_bytes = most_resident;
    return try_plugin(contract::PluginFile::read(file), asked);
}

// The broken rule and what the plugin did; empty where none is broken.
std::string verdict(const CheckFindings& findings) {
    const RuleFinding* broken = findings.broken();
    return broken == nullptr ? "" : std::string(broken->rule->id) + ": " + broken->text;
}

std::string verdict_of(const std::string& name, std::chrono::seconds silence = 3s * slowness) {
    const std::string result = verdict(tried(plugin(name), silence));
    CHECK_FALSE(check::is_running(plugin(name)));
    return result;
}

using Catch::StartsWith;

}  // namespace

TEST_CASE("a good plugin passes its trial, by every rule") {
    const CheckFindings findings = tried(plugin("good"));
    CHECK(verdict(findings) == "");
    for (const RuleFinding& finding : findings.rules) {
        INFO(finding.rule->id);
        CHECK(finding.state == RuleFinding::State::holds);
    }
}

TEST_CASE("each of the host's own models passes its trial") {
    for (const auto* model : {"run", "scrap", "paper", "starch", "setup", "running", "energy", "consumables", "tooling",
                              "delivery", "outside-work"}) {
        INFO(model);
        CHECK(verdict(tried(std::string(FLUTEBOOK_PLUGIN_DIR) + "/" + model + ".so")) == "");
    }
}

TEST_CASE("a plugin that crashes breaks one rule, and what was not tried any more says so") {
    const CheckFindings findings = tried(plugin("crashes"));
    CHECK_THAT(verdict(findings), StartsWith(std::string("conduct.survives: ") + check::crashed));
    std::size_t broken = 0;
    for (const RuleFinding& finding : findings.rules) {
        broken += finding.state == RuleFinding::State::broken ? 1 : 0;
        if (finding.state == RuleFinding::State::not_tried) CHECK(finding.text == "needs conduct.survives");
    }
    CHECK(broken == 1);
}

TEST_CASE("a plugin that crashes when it is loaded is caught in that phase") {
    CHECK_THAT(verdict_of("crashes_when_loaded"),
               StartsWith("conduct.survives: crashed (SIGABRT) while it was loaded"));
}

TEST_CASE("a plugin whose own thread crashes is caught") {
    CHECK_THAT(verdict_of("crashes_on_a_thread_of_its_own"),
               StartsWith("conduct.survives: crashed (SIGABRT) while another thread ran"));
}

TEST_CASE("a plugin that ends the process has not passed, whatever the code") {
    CHECK_THAT(verdict_of("exits"), StartsWith("conduct.survives: ended the process with code 0 while it evaluated"));
}

TEST_CASE("a plugin that hangs is killed, in whatever phase") {
    CHECK_THAT(verdict_of("hangs", 1s * slowness), StartsWith("conduct.comes-back: did not come back within"));
    CHECK_THAT(verdict_of("hangs_when_loaded", 1s * slowness),
               StartsWith("conduct.comes-back: did not come back within") && Catch::EndsWith("while it was loaded"));
}

// The sanitizers spend so much of those seconds themselves that another limit ends the trial first.
#if !defined(FLUTEBOOK_SANITIZED)
TEST_CASE("a trial before first trust ends after two seconds of its own, whether its plugin hangs or only dawdles") {
    // A plugin that spins uses the processor for as long as the trial's clock runs, however busy the machine is.
    const auto processor_time = [] {
        rusage used{};
        ::getrusage(RUSAGE_CHILDREN, &used);
        return std::chrono::seconds(used.ru_utime.tv_sec) + std::chrono::microseconds(used.ru_utime.tv_usec);
    };
    for (const auto* name : {"hangs", "dawdles"}) {
        INFO(name);
        const auto before = processor_time();
        const auto findings = try_plugin(contract::PluginFile::read(plugin(name)), asked_for_trust(FLUTEBOOK_PROGRAM));
        CHECK_THAT(verdict(findings), StartsWith("conduct.comes-back: did not come back within "));
        CHECK(processor_time() - before > 1s * slowness);
        CHECK(processor_time() - before < 3s * slowness);
    }
}
#endif

TEST_CASE("a plugin that takes memory without end is killed") {
    CHECK_THAT(verdict_of("hungers"), StartsWith(fmt::format("conduct.memory: took more than {} MB while it evaluated",
                                                             most_resident >> 20U)));
}

TEST_CASE("a plugin that starts a process, writes a file or opens a connection does not get that far") {
    CHECK_THAT(verdict_of("forks"), StartsWith("conduct.alone: starts a process while evaluating generated order "));
    CHECK_THAT(verdict_of("writes_a_file"), StartsWith("conduct.alone: opens a file while evaluating"));
    CHECK_FALSE(std::filesystem::exists("left_by_a_plugin"));
    CHECK_THAT(verdict_of("opens_a_connection"), StartsWith("conduct.alone: opens a connection while evaluating"));
}

#if defined(__x86_64__)
TEST_CASE("a plugin that asks the system by another machine's numbers does not get past the filter") {
    // Where the system does not know the numbers of another architecture, the plugin crashes.
    CHECK_THAT(verdict_of("asks_as_another_machine"),
               StartsWith("conduct.alone: ") || StartsWith("conduct.survives: crashed"));
}
#endif

TEST_CASE("a plugin makes no system call that is not on the list of what models need") {
    const std::pair<const char*, const char*> misdeeds[] = {
        {"keeps_shared_memory", "takes memory that others can share"},
        {"keeps_a_memory_file", "takes memory that others can share"},
        {"types_for_the_user", "controls a terminal or a device"},
        {"asks_around_the_filter", "meddles with other processes"},
        {"signals_its_parent", "meddles with other processes"},
        {"asks_for_signals", "meddles with other processes"},
        {"copies_the_hosts_memory", "meddles with other processes"},
        {"sets_an_alarm", "sets a timer"},
        {"sets_its_limits", "changes a limit or a property of a process"},
        {"sets_the_hosts_limits", "changes a limit or a property of a process"},
        {"changes_file_times", "changes the file system"},
        {"changes_an_owner", "changes the file system"},
    };
    for (const auto& [name, what] : misdeeds) {
        INFO(name);
        CHECK_THAT(verdict_of(name), StartsWith(std::string("conduct.alone: ") + what + " while evaluating"));
    }
}

#if !defined(FLUTEBOOK_SANITIZED)
TEST_CASE("a plugin opens and reads no file while it evaluates") {
    CHECK_THAT(verdict_of("reads_a_file"), StartsWith("conduct.alone: opens a file while evaluating"));
    CHECK_THAT(verdict_of("reads_a_descriptor"), StartsWith("conduct.alone: reads a file while evaluating"));
}
#endif

TEST_CASE("a plugin cannot open the memory of the host, nor the user's files") {
    constexpr long version_question = 1;
    if (::syscall(SYS_landlock_create_ruleset, nullptr, 0, version_question) < 1) {
        WARN("this system has no Landlock");
        return;
    }
    CHECK(verdict_of("opens_the_hosts_memory") == "");
}

TEST_CASE("a plugin that writes into the report of its trial has failed it, whatever it wrote") {
    for (const auto* name : {"says_it_has_passed", "reports_nonsense", "floods_the_report", "repeats_the_report"}) {
        INFO(name);
        CHECK_THAT(verdict_of(name), StartsWith("conduct.alone: wrote into the report of its trial while it "));
    }
}

#if !defined(FLUTEBOOK_SANITIZED)
TEST_CASE("a plugin whose destructors hang, crash or print has failed its trial") {
    CHECK_THAT(
        verdict_of("hangs_at_the_end", 1s * slowness),
        StartsWith("conduct.comes-back: did not come back within") && Catch::EndsWith("while its destructors ran"));
    CHECK(verdict_of("crashes_at_the_end") == "conduct.survives: crashed (SIGABRT) while its destructors ran");
    CHECK(verdict_of("prints_at_the_end") == "conduct.alone: printed a text: found `12 boxes counted`");
}
#endif
