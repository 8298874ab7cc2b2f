// Every text of the pages on every ground it stands on, and every mark, by the contrast that WCAG 2.2 asks for: 4.5 to
// 1 of a text (success criterion 1.4.3), 3 to 1 of what is no text (1.4.11); relative luminance after its definition
// there.
#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "host/pages/assets.hpp"

using namespace flutebook;

namespace {

using Tokens = std::map<std::string, std::string>;

// The tokens that `:root` rules set in the parts of the style sheet that are for one scheme.
void read_tokens(const std::string& css, Tokens& tokens) {
    for (std::size_t at = css.find("--"); at != std::string::npos; at = css.find("--", at + 2)) {
        const std::size_t colon = css.find_first_of(":;}) ", at);
        if (colon == std::string::npos || css[colon] != ':') continue;
        const std::size_t end = css.find_first_of(";}", colon);
        const std::size_t hash = css.find('#', colon);
        if (hash != std::string::npos && hash < end) tokens[css.substr(at, colon - at)] = css.substr(hash, end - hash);
    }
}

// What stands in the braces behind `opening`, everywhere, and the sheet without it.
std::string taken_out(std::string& css, const std::string& opening) {
    std::string result;
    for (std::size_t at = css.find(opening); at != std::string::npos; at = css.find(opening, at)) {
        std::size_t end = css.find('{', at), depth = 0;
        do {
            depth += css[end] == '{' ? 1u : 0u;
            depth -= css[end] == '}' ? 1u : 0u;
            ++end;
        } while (depth > 0);
        result += css.substr(at, end - at);
        css.erase(at, end - at);
    }
    return result;
}

enum class Scheme { light, dark, paper };

Tokens tokens_of(Scheme scheme) {
    std::string css = pages::asset("flutebook.css").bytes;
    const std::string paper = taken_out(css, "@media print"),
                      dark = taken_out(css, "@media (prefers-color-scheme: dark)");
    Tokens tokens;
    read_tokens(css, tokens);
    if (scheme == Scheme::dark) read_tokens(dark, tokens);
    if (scheme == Scheme::paper) read_tokens(paper, tokens);
    return tokens;
}

double linear(int level) {
    const double share = level / 255.0;
    return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
}

double luminance(const std::string& colour) {
    const bool is_short = colour.size() == 4;
    const auto level = [&](std::size_t i) {
        const std::string digits = is_short ? std::string(2, colour[i + 1]) : colour.substr(1 + 2 * i, 2);
        return linear(std::stoi(digits, nullptr, 16));
    };
    return 0.2126 * level(0) + 0.7152 * level(1) + 0.0722 * level(2);
}

double contrast(const Tokens& tokens, const std::string& first, const std::string& second) {
    double light = luminance(tokens.at("--" + first)), dark = luminance(tokens.at("--" + second));
    if (light < dark) std::swap(light, dark);
    return (light + 0.05) / (dark + 0.05);
}

// Marks on grounds, each with each.
struct Pairs {
    std::vector<std::string> marks, grounds;
};

const std::vector<Pairs>& texts() {
    static const std::vector<Pairs> pairs = {
        {{"ink", "ink-2", "ink-3", "accent"}, {"sheet", "ground", "well", "accent-wash"}},
        {{"bad", "good", "warn"}, {"sheet", "well"}},
        {{"bad", "ink", "ink-2", "ink-3", "accent"}, {"bad-wash"}},
        {{"good", "ink", "ink-2", "ink-3", "accent"}, {"good-wash"}},
        {{"warn", "ink", "ink-2", "ink-3", "accent"}, {"warn-wash"}},
        {{"accent-ink"}, {"accent"}},
        {{"on-board"}, {"kraft", "joined"}}};
    return pairs;
}

const std::vector<Pairs>& marks() {
    static const std::vector<Pairs> pairs = {{{"edge", "accent"}, {"sheet", "ground", "well", "accent-wash"}},
                                             {{"kraft-line", "slot", "c-trim", "c-ends", "c-run", "c-change", "c-setup",
                                               "c-rejects", "c-cut", "c-surplus", "bad", "good", "ink"},
                                              {"sheet"}},
                                             {{"kraft-line"}, {"kraft", "joined"}}};
    return pairs;
}

void check_pairs(const std::vector<Pairs>& pairs, double least) {
    for (const Scheme scheme : {Scheme::light, Scheme::dark, Scheme::paper}) {
        const Tokens tokens = tokens_of(scheme);
        for (const Pairs& some : pairs)
            for (const std::string& mark : some.marks)
                for (const std::string& ground : some.grounds) {
                    CAPTURE(static_cast<int>(scheme), mark, ground);
                    CHECK(contrast(tokens, mark, ground) >= least);
                }
    }
}

}  // namespace

TEST_CASE("contrast is computed as it is defined") {
    const Tokens tokens = {{"--a", "#000000"}, {"--b", "#fff"}, {"--c", "#767676"}};
    CHECK(contrast(tokens, "a", "b") == Approx(21));
    CHECK(contrast(tokens, "c", "b") == Approx(4.54).margin(0.005));
}

TEST_CASE("the schemes have tokens of their own") {
    CHECK(tokens_of(Scheme::light).at("--ground") != tokens_of(Scheme::dark).at("--ground"));
    CHECK(tokens_of(Scheme::light).at("--sheet") != tokens_of(Scheme::dark).at("--sheet"));
}

TEST_CASE("every text can be read on every ground") {
    check_pairs(texts(), 4.5);
}

TEST_CASE("every edge of a control, and every mark of a drawing, can be seen") {
    check_pairs(marks(), 3);
}

TEST_CASE("no colour is left out, but for hairlines, which say nothing") {
    std::set<std::string> held = {"line", "line-2"};
    for (const auto& all : {texts(), marks()})
        for (const Pairs& some : all) {
            held.insert(some.marks.begin(), some.marks.end());
            held.insert(some.grounds.begin(), some.grounds.end());
        }
    for (const auto& [name, colour] : tokens_of(Scheme::light)) {
        CAPTURE(name);
        CHECK(held.count(name.substr(2)) == 1);
    }
}
