// Files that nobody wrote in good faith: whatever stands in them, reading ends soon, with a plant or with sentences.
#include <fmt/format.h>

#include <catch2/catch.hpp>

#include <ctime>
#include <fstream>
#include <functional>
#include <random>
#include <sstream>

#include "host/base/errors.hpp"
#include "tests/support/property.hpp"
#include "tests/unit/plant/plant_folder.hpp"

using namespace flutebook;
using fixture::PlantFolder;

namespace {

constexpr int files_to_try = 4000;
constexpr double longest_reading_s = 5;

const std::vector<std::string> files{"plant.yaml",    "papers.yaml",  "flutes.yaml", "boards.yaml",
                                     "machines.yaml", "plugins.yaml", "r.yaml"};

// What makes YAML, numbers and units go wrong, rather than bytes alone.
const std::vector<std::string> pieces{"{",
                                      "}",
                                      "[",
                                      "]",
                                      ":",
                                      ": ",
                                      ",",
                                      "- ",
                                      "? ",
                                      "&a ",
                                      "*a",
                                      "!",
                                      "!!",
                                      "|",
                                      ">",
                                      "\"",
                                      "'",
                                      "#",
                                      "%",
                                      "@",
                                      "`",
                                      "---\n",
                                      "...\n",
                                      "<<: ",
                                      "~",
                                      "\n",
                                      "\n  ",
                                      "\t",
                                      "\r",
                                      "\xEF\xBB\xBF",
                                      "\xFF",
                                      "0",
                                      "-",
                                      ".",
                                      "1e9",
                                      "nan",
                                      "9999999999999999999999",
                                      "kft2",
                                      " lb/MSF",
                                      " ton",
                                      "since",
                                      "(",
                                      ")",
                                      "2026-02-30",
                                      "\\x00",
                                      "\\"};

using Draw = std::mt19937_64;

std::size_t below(Draw& draw, std::size_t end) {
    return std::uniform_int_distribution<std::size_t>(0, end - 1)(draw);
}

std::string text_of(const std::string& path) {
    std::ostringstream text;
    text << std::ifstream(path, std::ios::binary).rdbuf();
    return text.str();
}

// Cuts, doubles, inserts or overwrites at a place drawn by chance.
void mutate_once(std::string& text, Draw& draw) {
    const auto at = below(draw, text.size() + 1);
    const auto length = below(draw, 20);
    switch (below(draw, 5)) {
        case 0:
            text.erase(at, length);
            break;
        case 1:
            text.insert(at, text.substr(below(draw, text.size() + 1), length));
            break;
        case 2:
            text.insert(at, 1, static_cast<char>(below(draw, 256)));
            break;
        default:
            text.insert(at, pieces[below(draw, pieces.size())]);
            break;
    }
}

// Reads all of the folder; an InputError with at least one sentence is as good as a plant.
void read_whole(const PlantFolder& folder) {
    try {
        static_cast<void>(folder.read_request());
    } catch (const InputError& error) {
        RC_ASSERT_FALSE(error.lines().empty());
        for (const auto& line : error.lines()) RC_ASSERT(line.find('\n') == std::string::npos && line.size() < 1000);
    }
}

// Of the processor, not of the clock on the wall: other work on the machine is no fault of the reader's. What waits
// forever is ended by the time limit of the test itself.
double seconds_of_work(const std::function<void()>& reading) {
    const auto start = std::clock();
    reading();
    return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

std::string repeated(const std::string& piece, std::size_t bytes) {
    std::string result;
    while (result.size() + piece.size() <= bytes) result += piece;
    return result;
}

}  // namespace

TEST_CASE("files with anything changed in them are read or refused, and soon") {
    const PlantFolder folder;
    std::vector<std::string> originals;
    for (const auto& file : files) originals.push_back(text_of(folder.path(file)));
    REQUIRE(fixture::holds_for_seeds(files_to_try, [&](std::uint64_t seed) {
        Draw draw(seed);
        const auto which = below(draw, files.size());
        auto text = originals[which];
        for (auto changes = 1 + below(draw, 6); changes > 0; --changes) mutate_once(text, draw);
        folder.write(files[which], text);
        RC_ASSERT(seconds_of_work([&] { read_whole(folder); }) < longest_reading_s);
        folder.write(files[which], originals[which]);
    }));
}

TEST_CASE("the largest files of one piece over and over are refused soon, whichever file it is") {
    constexpr std::size_t nearly_full = 255 * 1024;
    for (const std::string piece :
         {"[",  "{",      "a: ",     "a:\n", "- ",  "-\n", "? ",    "&a ", "*a ", "!a ", "\"", "'",        "#",
          "a,", "{a: b,", "x: {}\n", "[],",  "|\n", "%",   "---\n", "a",   " ",   "\n",  "\\", "<<: *a\n", ": "}) {
        const PlantFolder folder;
        folder.write("papers.yaml", repeated(piece, nearly_full));
        CAPTURE(piece);
        REQUIRE(seconds_of_work([&] { REQUIRE_FALSE(folder.complaints().empty()); }) < longest_reading_s);
    }
}

TEST_CASE("ten thousands of keys, codes and references cost no more than reading them") {
    struct Flood {
        const char *file, *before, *item, *after;
    };
    const std::vector<Flood> floods{{"r.yaml", "request: R\n", "k{}: 1\n", ""},
                                    {"r.yaml", "quantities: [", "{},", "1]\n"},
                                    {"r.yaml", "route: [", "M{},", "FG1]\n"},
                                    {"r.yaml", "extras: {", "m{}: {{}},", "m: {}}\n"},
                                    {"plant.yaml", "shifts: [", "s{},", "s]\n"},
                                    {"plugins.yaml", "plugins:\n", "  - m{}: {{}}\n", "prefer: {a: m}\n"},
                                    {"papers.yaml", "papers:\n", "  P{}: {{}}\n", ""},
                                    // Last, so that it meets the flood of papers.
                                    {"boards.yaml", "boards:\n  A: {plies: [", "Q{},", "Q]}\n"}};
    const auto flood_size = static_cast<std::size_t>(fixture::trials(250'000));
    const PlantFolder folder;
    for (const auto& flood : floods) {
        std::string text = flood.before;
        for (int i = 0; text.size() < flood_size; ++i) text += fmt::format(fmt::runtime(flood.item), i);
        text += flood.after;
        const auto is_request = std::string(flood.file) == "r.yaml";
        const auto original = text_of(folder.path(flood.file));
        folder.write(flood.file, text);
        CAPTURE(flood.file, flood.item);
        const auto lines_of = [&] { return is_request ? folder.request_complaints() : folder.complaints(); };
        REQUIRE(seconds_of_work([&] { REQUIRE_FALSE(lines_of().empty()); }) < longest_reading_s);
        if (is_request) folder.write(flood.file, original);
    }
}
