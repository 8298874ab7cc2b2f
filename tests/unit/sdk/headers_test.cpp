// Both headers compile alone, with both compilers, in every language that a plugin's author may use.
#include <catch2/catch.hpp>

#include <fstream>
#include <sstream>

#include "tests/unit/sdk/compiler.hpp"

using flutebook::sdk_test::Compiler;
using flutebook::sdk_test::compilers;
using flutebook::sdk_test::Verdict;

namespace {

void check_taken(const std::string& text, const std::string& options) {
    for (const Compiler& compiler : compilers()) {
        const Verdict verdict = compiler.judge(text, options);
        INFO(compiler.name() << " " << options << "\n" << verdict.said);
        CHECK(verdict.is_taken);
    }
}

std::string source_of(const std::string& model) {
    std::ifstream in(FLUTEBOOK_SOURCE_DIR "/tests/unit/sdk/models/" + model + ".cpp");
    std::ostringstream text;
    text << in.rdbuf();
    REQUIRE(text.str().find("FLUTEBOOK_MODEL(") != std::string::npos);
    return text.str();
}

}  // namespace

TEST_CASE("the C header compiles alone as C99 and as C11") {
    const std::string text = "#include <flutebook/plugin.h>\nconst flutebook_model *shown = &flutebook_plugin;\n";
    for (const char* language : {"-x c -std=c99", "-x c -std=c11", "-x c -std=c17"}) check_taken(text, language);
}

TEST_CASE("the C header compiles alone as C++, old and new") {
    const std::string text = "#include <flutebook/plugin.h>\nconst flutebook_model *shown = &flutebook_plugin;\n";
    for (const char* language : {"-x c++ -std=c++11", "-x c++ -std=c++20"}) check_taken(text, language);
}

TEST_CASE("the C header may be included twice") {
    check_taken("#include <flutebook/plugin.h>\n#include <flutebook/plugin.h>\nint used;\n", "-x c -std=c99");
}

TEST_CASE("a header that does not compile is not taken") {
    for (const Compiler& compiler : compilers())
        CHECK_FALSE(
            compiler.judge("#include <flutebook/plugin.h>\nflutebook_modell model;\n", "-x c -std=c99").is_taken);
}

TEST_CASE("the C++ headers compile alone") {
    check_taken("#include <flutebook/plugin.hpp>\n", "-x c++ -std=c++20");
    check_taken("#include <flutebook/run.hpp>\n", "-x c++ -std=c++20");
}

TEST_CASE("a model compiles without exceptions and without run-time types") {
    check_taken(source_of("varnish"), "-x c++ -std=c++20 -fno-exceptions -fno-rtti");
    check_taken(source_of("varnish"), "-x c++ -std=c++20");
}

TEST_CASE("a model compiles in a stricter house than ours") {
    check_taken(source_of("varnish"),
                "-x c++ -std=c++20 -Wconversion -Wsign-conversion -Wshadow -Wold-style-cast "
                "-Wextra-semi -Wundef -Wdouble-promotion -Wcast-qual");
}
