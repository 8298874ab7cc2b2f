// Mutated reports of trials, as a plugin might make its process send them: nothing but a whole and valid report of
// rules that all hold may count as a trial that was passed.
#include <algorithm>
#include <chrono>
#include <csignal>
#include <sstream>
#include <string>
#include <vector>

#include "host/plugin_check/trial_report.hpp"
#include "tests/fuzz/fuzzer.hpp"

using namespace flutebook;
using namespace flutebook::plugin_check;
using fuzz::CaseEnd;
using fuzz::Draws;
using fuzz::WrongCase;
using sandbox::ChildMessage;
using sandbox::Stopped;

namespace {

constexpr sandbox::ReportKey key{0x243f6a8885a308d3U, 0x13198a2e03707344U};
using Lines = std::vector<std::string>;

std::vector<const Rule*> all_rules() {
    std::vector<const Rule*> result;
    for (const Rule& rule : rules()) result.push_back(&rule);
    return result;
}

// The lines without which a report is not one of a trial that was passed.
Lines needed_lines() {
    Lines result;
    for (const Rule& rule : rules()) {
        if (rule.tries == nullptr) continue;
        result.push_back(std::string("rule ") + rule.id);
        result.emplace_back("holds");
    }
    result.emplace_back("end");
    return result;
}

Lines good_lines() {
    Lines result;
    for (const std::string& line : needed_lines()) {
        if (line == "end") result.insert(result.end(), {"figure load_ms 0.2", "figure row_ns 12.5"});
        result.push_back(line);
        if (line.rfind("rule ", 0) == 0) result.insert(result.end(), {"phase it evaluated", "note it needs libm.so.6"});
    }
    return result;
}

std::string marked(std::uint64_t number, const std::string& line) {
    std::string digits;
    for (unsigned shift = 64; shift > 0; shift -= 4)
        digits += "0123456789abcdef"[(sandbox::mark_of_line(key, number) >> (shift - 4)) & 15U];
    return digits + " " + line + "\n";
}

std::string all_marked(const Lines& lines) {
    std::string result;
    std::uint64_t number = 0;
    for (const std::string& line : lines) result += marked(number++, line);
    return result;
}

Lines lines_of(const std::string& text) {
    Lines result;
    std::istringstream all(text);
    for (std::string line; std::getline(all, line);) result.push_back(line);
    return result;
}

// Lines that the child itself marks, changed before that; or the bytes that were sent, changed afterwards.
std::string sent_bytes(Draws& draws) {
    std::string text;
    for (const std::string& line : good_lines()) text += line + "\n";
    if (draws.one_in(2)) return all_marked(lines_of(fuzz::mutated(text, draws)));
    if (draws.one_in(20)) return all_marked(good_lines());
    return fuzz::mutated(all_marked(good_lines()), draws);
}

sandbox::WatchedEnd drawn_end(Draws& draws, bool is_valid) {
    if (!is_valid) return {Stopped::false_report, {0, SIGKILL}, ""};
    if (draws.one_in(10))
        return {draws.of(std::vector<Stopped>{Stopped::out_of_time, Stopped::out_of_memory}), {0, SIGKILL}, ""};
    if (draws.one_in(10)) return {Stopped::by_itself, {static_cast<int>(draws.below(3)), 0}, ""};
    if (draws.one_in(10)) return {Stopped::by_itself, {0, 0}, fuzz::mutated("printed", draws)};
    return {Stopped::by_itself, {0, 0}, ""};
}

bool ended_well(const sandbox::WatchedEnd& end) {
    return end.stopped == Stopped::by_itself && end.ended.code == 0 && end.ended.signal == 0 && end.printed.empty();
}

CaseEnd run_case(Draws& draws) {
    static const Lines needed = needed_lines();
    const std::string bytes = sent_bytes(draws);
    TrialReport report(all_rules(), {});
    Lines seen;
    sandbox::Listener listener(
        [&](const ChildMessage& message) {
            if (message.word == "rule") seen.push_back("rule " + message.text);
            if (message.word != "rule" && message.word != "phase" && message.word != "note" &&
                message.word != "figure" && message.word != "orders")
                seen.push_back(message.word + (message.text.empty() ? "" : " " + message.text));
            report.take(message);
        },
        key);
    bool is_valid = true;
    for (std::size_t at = 0; at < bytes.size();) {
        const std::size_t count = std::min(bytes.size() - at, 1 + draws.below(300));
        is_valid = listener.hear(std::string_view(bytes).substr(at, count));
        at += count;
    }
    const sandbox::WatchedEnd end = drawn_end(draws, is_valid);
    const CheckFindings findings = report.conclude(end, {std::chrono::seconds(2), std::chrono::seconds(2), 1});
    if (!findings.has_passed()) return CaseEnd::refused;
    if (seen != needed || !ended_well(end)) throw WrongCase{"a trial that was not passed counts as passed", bytes};
    return CaseEnd::answered;
}

}  // namespace

int main(int count, char** words) {
    return fuzz::run_fuzzer(count, words, run_case);
}
