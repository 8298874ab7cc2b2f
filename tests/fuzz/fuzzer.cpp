#include "tests/fuzz/fuzzer.hpp"

#include <unistd.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <iostream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "host/base/characters.hpp"

namespace flutebook::fuzz {

namespace {

using Json = nlohmann::json;

constexpr unsigned longest_case_s = 20;
constexpr std::size_t longest_line = 4000;

// Read by the handler of signals, so in plain memory.
std::array<char, 200> running{};

void set_running(std::uint64_t seed, std::uint64_t number) {
    std::snprintf(running.data(), running.size(), "--seed %llu --only %llu", static_cast<unsigned long long>(seed),
                  static_cast<unsigned long long>(number));
}

void tell(const char* text) {
    static_cast<void>(!::write(STDERR_FILENO, text, std::strlen(text)));
}

extern "C" void on_signal(int signal) {
    tell(signal == SIGALRM ? "WRONG: still running after 20 s: " : "WRONG: crashed: ");
    tell(running.data());
    tell("\n");
    std::_Exit(1);
}

struct Asked {
    std::uint64_t seed = 1, cases = 1000;
    std::optional<std::uint64_t> only;
};

Asked read(int count, char** words) {
    Asked asked;
    for (int i = 1; i + 1 < count; i += 2) {
        const std::string word = words[i];
        const std::uint64_t value = std::strtoull(words[i + 1], nullptr, 10);
        if (word == "--seed")
            asked.seed = value;
        else if (word == "--cases")
            asked.cases = value;
        else if (word == "--only")
            asked.only = value;
    }
    return asked;
}

std::optional<CaseEnd> run_one(const Asked& asked, std::uint64_t number,
                               const std::function<CaseEnd(Draws&)>& run_case) {
    set_running(asked.seed, number);
    ::alarm(longest_case_s);
    Draws draws(asked.seed, number);
    std::string what, text;
    try {
        return run_case(draws);
    } catch (const WrongCase& wrong) {
        what = wrong.what;
        text = wrong.text;
    } catch (const std::exception& error) {
        what = std::string("an exception that nothing caught: ") + error.what();
    }
    std::cerr << "WRONG: " << running.data() << ": " << what << '\n';
    if (!text.empty()) {
        const std::string kept = "wrong-case-" + std::to_string(asked.seed) + "-" + std::to_string(number);
        std::ofstream(kept) << text;
        std::cerr << "its text is in " << kept << '\n';
    }
    return std::nullopt;
}

// The keys that lead to a number are told as "requests.0.quotes.1.cost".
std::optional<std::string> fault_in(const Json& value, const std::string& path, const std::string& key,
                                    const std::vector<std::string>& may_be_negative) {
    if (value.is_structured()) {
        for (const auto& member : value.items()) {
            const std::string& name = value.is_object() ? member.key() : key;
            const bool is_free =
                std::find(may_be_negative.begin(), may_be_negative.end(), name) != may_be_negative.end();
            if (is_free) continue;
            if (auto fault = fault_in(member.value(), path + "." + member.key(), name, may_be_negative)) return fault;
        }
        return std::nullopt;
    }
    if (!value.is_number()) return std::nullopt;
    const double number = value.get<double>();
    if (std::isfinite(number) && number >= 0) return std::nullopt;
    return path + " is " + value.dump();
}

}  // namespace

int run_fuzzer(int count, char** words, const std::function<CaseEnd(Draws&)>& run_case) {
    const Asked asked = read(count, words);
    for (const int signal : {SIGSEGV, SIGABRT, SIGFPE, SIGBUS, SIGILL, SIGALRM}) std::signal(signal, on_signal);
    const std::uint64_t first = asked.only.value_or(0);
    const std::uint64_t past = asked.only ? first + 1 : asked.cases;
    std::uint64_t refused = 0, answered = 0;
    for (std::uint64_t number = first; number < past; ++number) {
        const auto end = run_one(asked, number, run_case);
        if (!end) return 1;
        (*end == CaseEnd::refused ? refused : answered) += 1;
    }
    ::alarm(0);
    std::cout << words[0] << ": seed " << asked.seed << ", " << refused + answered << " cases: " << refused
              << " refused, " << answered << " answered, none wrong\n";
    return 0;
}

std::optional<std::string> fault_of_refusal(const std::vector<std::string>& lines,
                                            const std::vector<std::string>& places) {
    if (lines.empty()) return "a refusal without a word";
    for (const std::string& line : lines) {
        const bool is_placed = std::any_of(places.begin(), places.end(), [&](const std::string& place) {
            return line.compare(0, place.size(), place) == 0 && line.find(": ") != std::string::npos;
        });
        if (!is_placed) return "a refusal that does not say where: " + line;
        if (!base::is_plain_line(line)) return "a refusal that is no plain text: " + line;
        if (line.size() > longest_line) return "a refusal too long to be read: " + line.substr(0, longest_line);
    }
    return std::nullopt;
}

std::optional<std::string> fault_of_document(const std::string& text, const std::vector<std::string>& may_be_negative) {
    const Json document = Json::parse(text, nullptr, false);
    if (document.is_discarded()) return "an answer that is no JSON";
    return fault_in(document, "", "", may_be_negative);
}

std::string read_file(const std::string& file) {
    std::ostringstream result;
    result << std::ifstream(file, std::ios::binary).rdbuf();
    return result.str();
}

}  // namespace flutebook::fuzz
