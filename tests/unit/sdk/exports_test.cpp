// What a built plugin shows to the outside: its description, and nothing that another plugin could trip over.
#include <catch2/catch.hpp>

#include <array>
#include <cstdio>
#include <sstream>
#include <string>
#include <vector>

namespace {

// The symbols that a library defines for others, less what the sanitizers add to it.
std::vector<std::string> shown_by(const std::string& file) {
    FILE* listing = popen(("nm -D --defined-only '" + file + "'").c_str(), "r");
    REQUIRE(listing != nullptr);
    std::string text;
    std::array<char, 4096> piece;
    for (std::size_t length; (length = fread(piece.data(), 1, piece.size(), listing)) > 0;)
        text.append(piece.data(), length);
    REQUIRE(pclose(listing) == 0);
    std::vector<std::string> symbols;
    std::istringstream lines(text);
    for (std::string address, kind, name; lines >> address >> kind >> name;)
        if (name.find("asan") == std::string::npos) symbols.push_back(kind + " " + name);
    return symbols;
}

}  // namespace

TEST_CASE("a plugin shows one symbol, and it is data") {
    for (const char* id : {"run", "scrap", "paper", "starch", "setup", "running", "energy", "consumables", "tooling",
                           "delivery", "outside-work"}) {
        INFO(id);
        CHECK(shown_by(std::string(FLUTEBOOK_PLUGIN_DIR) + "/" + id + ".so") ==
              std::vector<std::string>{"D flutebook_plugin"});
    }
    CHECK(shown_by(FLUTEBOOK_SAMPLE_PLANT "/plugins/varnish.so") == std::vector<std::string>{"D flutebook_plugin"});
}
