// A wrong style never prices: the reader, drawing it at a size or the proof finds what is wrong, each with its place.
#include <catch2/catch.hpp>

#include <algorithm>
#include <regex>

#include "host/base/errors.hpp"
#include "host/box_styles/styles_file.hpp"
#include "host/services/styles/check_styles.hpp"
#include "tests/unit/services/demo_styles.hpp"
#include "tests/unit/services/wrong_styles.hpp"

using namespace flutebook;
using fixture::WrongStyle;

namespace {

// The library's entry as a plant's own file.
std::string entry_of(const std::string& code) {
    std::string library;
    for (const box_styles::LibraryFile& file : box_styles::library_files())
        library += "\n" + file.text + "\n  \"end\":\n";
    const std::string quoted = "\n  \"" + code + "\":\n";
    const std::size_t begin = library.find(quoted);
    REQUIRE(begin != std::string::npos);
    static const std::regex next_key("\n  [\"a-z#]");
    std::smatch next;
    const std::string rest = library.substr(begin + quoted.size());
    REQUIRE(std::regex_search(rest, next, next_key));
    return "styles:" + quoted + rest.substr(0, static_cast<std::size_t>(next.position()) + 1);
}

std::string wrong_text(const WrongStyle& wrong) {
    std::string text = entry_of(wrong.code);
    const std::size_t at = text.find(wrong.from);
    INFO(wrong.from << " in\n" << text);
    REQUIRE(at != std::string::npos);
    return text.replace(at, std::string(wrong.from).size(), wrong.to);
}

// What was said of the style, at any of the sizes; empty: it prices.
std::vector<std::string> said_of(const WrongStyle& wrong) {
    std::vector<std::string> said;
    try {
        plant_answers::StyleCheckOptions options;
        options.code = wrong.code;
        const plant::Plant plant = fixture::demo_plant_with(wrong_text(wrong));
        const plant_answers::StyleCheck check = services::check_styles(plant, options);
        for (const plant_answers::StyleTrial& trial : check.styles.at(0).trials) {
            if (!trial.refusal.empty()) said.push_back(trial.refusal);
            for (const blanks::FoldingFault& fault : trial.proof.faults) said.push_back(fault.text);
        }
    } catch (const InputError& error) {
        said = error.lines();
    }
    return said;
}

// A line of a file, a step, a cell of the style, or a face or side of the box.
bool names_a_place(const std::string& text) {
    static const std::regex place(
        R"(styles\.yaml:[0-9]+:[0-9]+|step [0-9]+: [a-z]\w* and|joint \w+ on|inside [LBH] between|inside: L, B and H|stands|is covered to|does not go over|the box is turned inside out)");
    return std::regex_search(text, place);
}

}  // namespace

TEST_CASE("a style with one thing wrong is refused or found by the proof, with its place") {
    for (const WrongStyle& wrong : fixture::wrong_styles()) {
        if (wrong.excuse != nullptr) continue;
        DYNAMIC_SECTION(wrong.code << ": " << wrong.sentence) {
            const std::vector<std::string> said = said_of(wrong);
            REQUIRE_FALSE(said.empty());
            INFO(said.front());
            REQUIRE(std::all_of(said.begin(), said.end(), names_a_place));
        }
    }
}

TEST_CASE("of 81 wrong styles at least 77 are refused or found") {
    const auto& all = fixture::wrong_styles();
    REQUIRE(all.size() == 81);
    const auto is_found = [](const WrongStyle& wrong) { return !said_of(wrong).empty(); };
    REQUIRE(std::count_if(all.begin(), all.end(), is_found) >= 77);
}
