// The report of a child process: which lines are taken, and that nothing but a complete, valid report means that a
// plugin has passed.
#include <catch2/catch.hpp>

#include <algorithm>
#include <csignal>
#include <functional>
#include <string>
#include <vector>

#include "host/plugin_check/trial_report.hpp"

using namespace flutebook;
using namespace flutebook::plugin_check;
using sandbox::ChildMessage;
using sandbox::Listener;
using sandbox::Stopped;

namespace {

constexpr sandbox::ReportKey key{0x0706050403020100U, 0x0f0e0d0c0b0a0908U};

std::string marked(std::uint64_t number, const std::string& line) {
    std::string digits;
    for (int shift = 60; shift >= 0; shift -= 4)
        digits += "0123456789abcdef"[(sandbox::mark_of_line(key, number) >> static_cast<unsigned>(shift)) & 15U];
    return digits + " " + line + "\n";
}

// The lines that are taken of a report in two lines, the second one changed.
std::vector<std::string> taken(const std::string& second) {
    std::vector<std::string> result;
    Listener listener([&](const ChildMessage& message) { result.push_back(message.word); }, key);
    CHECK(listener.hear(marked(0, "first line")));
    static_cast<void>(listener.hear(second));
    return result;
}

using Lines = std::vector<ChildMessage>;

std::vector<const Rule*> all_rules() {
    std::vector<const Rule*> result;
    for (const Rule& rule : rules()) result.push_back(&rule);
    return result;
}

// A report of a trial in which all rules hold.
Lines good_report() {
    Lines result;
    for (const Rule& rule : rules()) {
        if (rule.tries == nullptr) continue;
        result.push_back({"rule", rule.id});
        result.push_back({"holds", ""});
    }
    result.push_back({"end", ""});
    return result;
}

CheckFindings found(const Lines& lines, const sandbox::WatchedEnd& ended = {Stopped::by_itself, {0, 0}, ""}) {
    TrialReport report(all_rules(), {});
    for (const ChildMessage& line : lines) report.take(line);
    return report.conclude(ended, {std::chrono::seconds(2), std::chrono::seconds(2), std::size_t{1} << 20});
}

// A good report with a change, after which it must not pass. The broken rule.
std::string broken_by(const std::function<void(Lines&)>& change) {
    Lines lines = good_report();
    change(lines);
    const CheckFindings findings = found(lines);
    CHECK_FALSE(findings.has_passed());
    return findings.broken() == nullptr ? "" : findings.broken()->rule->id;
}

}  // namespace

TEST_CASE("the mark of a line is SipHash-2-4 of its number") {
    // The example of the paper by Aumasson and Bernstein (appendix A, for fifteen bytes) has no eight-byte case; this
    // is the eight-byte case of the authors' table of test vectors, from memory.
    CHECK(sandbox::mark_of_line(key, 0x0706050403020100U) == 0x93f5f5799a932462U);
}

TEST_CASE("a line without the mark that comes next is not taken, and none after it") {
    const std::vector<std::string> first = {"first"};
    CHECK(taken(marked(1, "end")) == std::vector<std::string>{"first", "end"});
    CHECK(taken(marked(0, "end")) == first);  // a mark that was used
    CHECK(taken(marked(2, "end")) == first);
    CHECK(taken("end\n" + marked(1, "end")) == first);
    CHECK(taken("died nonsense\n") == first);
    CHECK(taken(marked(1, std::string("a\x1b[2J"))) == first);
    CHECK(taken(marked(1, "\xff")) == first);
    CHECK(taken(marked(1, std::string(sandbox::longest_line, 'x'))) == first);
}

TEST_CASE("a report that is too long is not read on") {
    std::size_t lines = 0;
    Listener listener([&](const ChildMessage&) { ++lines; }, key);
    const std::string text(sandbox::longest_line / 2, 'x');
    std::uint64_t number = 0;
    while (listener.hear(marked(number, text))) ++number;
    CHECK(lines <= sandbox::longest_report / text.size());
    CHECK_FALSE(listener.hear(marked(number, "end")));
}

TEST_CASE("only a complete report of rules that all hold has passed") {
    CHECK(found(good_report()).has_passed());
    CHECK(broken_by([](Lines& lines) { lines.pop_back(); }) == survives);
    CHECK(broken_by([](Lines& lines) { lines.erase(lines.begin() + 2, lines.end() - 1); }) == keeps_to_itself);
    CHECK(broken_by([](Lines& lines) { lines = {{"end", ""}}; }) == keeps_to_itself);
    CHECK(broken_by([](Lines& lines) { lines = {}; }) == survives);
    CHECK(broken_by([](Lines& lines) { lines[1] = {"not-tried", "needs load.binds"}; }) == "");
}

TEST_CASE("a line that cannot come next is a failed trial, never a fault of the host") {
    for (const ChildMessage& line : Lines{{"died", "nonsense"},
                                          {"died", "evaluate.answers did nothing"},
                                          {"rule", "no.such-rule"},
                                          {"rule", ""},
                                          {"holds", "surely"},
                                          {"broken", ""},
                                          {"figure", "a 1"},
                                          {"figure", "row_ns nan"},
                                          {"figure", "row_ns"},
                                          {"orders", "-1"},
                                          {"orders", "99999999999999999999999999"},
                                          {"", ""},
                                          {"unknown", "word"}})
        for (const std::ptrdiff_t at : {0, 1, 2}) {
            INFO(line.word << " " << line.text << " at " << at);
            CHECK(broken_by([&](Lines& lines) { lines.insert(lines.begin() + at, line); }) == keeps_to_itself);
        }
    CHECK(broken_by([](Lines& lines) { std::swap(lines[0], lines[2]); }) == keeps_to_itself);
    CHECK(broken_by([](Lines& lines) { lines.push_back({"holds", ""}); }) == keeps_to_itself);
}

TEST_CASE("a process that ends badly after a complete report has not passed") {
    const auto rule = [](const sandbox::WatchedEnd& ended) {
        const CheckFindings findings = found(good_report(), ended);
        CHECK_FALSE(findings.has_passed());
        return std::string(findings.broken() == nullptr ? "" : findings.broken()->rule->id);
    };
    CHECK(rule({Stopped::by_itself, {1, 0}, ""}) == survives);
    CHECK(rule({Stopped::by_itself, {0, SIGSEGV}, ""}) == survives);
    CHECK(rule({Stopped::out_of_time, {0, SIGKILL}, ""}) == comes_back);
    CHECK(rule({Stopped::out_of_memory, {0, SIGKILL}, ""}) == takes_little);
    CHECK(rule({Stopped::false_report, {0, SIGKILL}, ""}) == keeps_to_itself);
    CHECK(rule({Stopped::by_itself, {0, 0}, "hello"}) == keeps_to_itself);
}
