// What a model declares wrongly does not compile, and the compiler's words lead to the mistake. Beside each wrong
// declaration stands the right one, which compiles: nothing but the mistake stops the other.
#include <catch2/catch.hpp>

#include "tests/unit/sdk/compiler.hpp"

using flutebook::sdk_test::Compiler;
using flutebook::sdk_test::compilers;
using flutebook::sdk_test::Verdict;

namespace {

// A model of these declarations, that evaluates by these statements.
std::string model(const std::string& declarations, const std::string& statements) {
    return "#include <flutebook/plugin.hpp>\n"
           "using namespace flutebook;\n"
           "struct Tried : Model {\n" +
           declarations + "\n    void evaluate([[maybe_unused]] Frame& f) const {\n" + statements +
           "\n    }\n};\n"
           "FLUTEBOOK_MODEL(Tried, \"tried\", \"1.0.0\", \"Tried\")\n";
}

// What the compiler must say; where the mistake has no name of ours, each has words of its own for it.
struct Words {
    Words(const char* both) : gxx(both), clangxx(both) {}
    Words(const char* of_gxx, const char* of_clangxx) : gxx(of_gxx), clangxx(of_clangxx) {}
    std::string gxx, clangxx;
};

void check_refused(const std::string& wrong, const std::string& right, const Words& words) {
    for (const Compiler& compiler : compilers()) {
        const Verdict good = compiler.judge(right, "-x c++ -std=c++20");
        INFO(compiler.name() << "\n" << right << good.said);
        CHECK(good.is_taken);
        const Verdict bad = compiler.judge(wrong, "-x c++ -std=c++20");
        INFO(compiler.name() << "\n" << wrong);
        CHECK_FALSE(bad.is_taken);
        CHECK_THAT(bad.said, Catch::Contains(compiler.name() == "g++" ? words.gxx : words.clangxx));
    }
}

void check_declaration(const std::string& wrong, const std::string& right, const Words& words) {
    check_refused(model(wrong, ""), model(right, ""), words);
}

const std::string fed = R"(Need<step> fed = need("run.fed", "1", "pieces fed to each step");)";
const std::string papers = R"(Need<ply> paper = need("paper.issued", "kg", "paper of each ply");)";
const std::string glue_line = R"(Line<step> glue = line("glue", "kg", material, per_unit, "Glue");)";

}  // namespace

TEST_CASE("a default out of its range does not compile") {
    check_declaration(R"(Setting<by_plant> price = setting("price", "money/kg", 101, {0, 100}, "glue");)",
                      R"(Setting<by_plant> price = setting("price", "money/kg", 100, {0, 100}, "glue");)",
                      "a_default_lies_outside_its_range");
}

TEST_CASE("a default below its range does not compile") {
    check_declaration(R"(Setting<by_machine> price = setting("price", "money/kg", -0.001, {0, 100}, "glue");)",
                      R"(Setting<by_machine> price = setting("price", "money/kg", 0, {0, 100}, "glue");)",
                      "a_default_lies_outside_its_range");
}

TEST_CASE("a choice that is not among its names does not compile") {
    const std::string names = "static constexpr const char* ways[] = {\"glue\", \"tape\"};\n";
    check_declaration(names + R"(Setting<by_request> way = choice("way", ways, 2, "how the joint is closed");)",
                      names + R"(Setting<by_request> way = choice("way", ways, 1, "how the joint is closed");)",
                      "a_default_lies_outside_its_range");
}

TEST_CASE("a range upside down does not compile") {
    check_declaration(R"(Need<order> area = need("box.area", "m2", "board in a box", {1, 0});)",
                      R"(Need<order> area = need("box.area", "m2", "board in a box", {0, 1});)",
                      "a_range_is_upside_down_or_not_finite");
}

TEST_CASE("a range without end does not compile") {
    check_declaration(R"(Provide<order> n = provide("own.n", "1", "n", {0, std::numeric_limits<double>::infinity()});)",
                      R"(Provide<order> n = provide("own.n", "1", "n", {0, std::numeric_limits<double>::max()});)",
                      "a_range_is_upside_down_or_not_finite");
    check_declaration(
        R"(Provide<order> n = provide("own.n", "1", "n", {std::numeric_limits<double>::quiet_NaN(), 1});)",
        R"(Provide<order> n = provide("own.n", "1", "n", {-1, 1});)", "a_range_is_upside_down_or_not_finite");
}

TEST_CASE("a name declared twice does not compile, in any list") {
    const char* word = "a_name_is_declared_twice";
    check_declaration(fed + R"(Need<order> again = need("run.fed", "1", "once more");)",
                      fed + R"(Need<order> again = need("run.fee", "1", "another");)", word);
    check_declaration(R"(Provide<step> a = provide("own.a", "1", "a"); Provide<step> b = provide("own.a", "1", "b");)",
                      R"(Provide<step> a = provide("own.a", "1", "a"); Provide<step> b = provide("own.b", "1", "b");)",
                      word);
    check_declaration(
        R"(Setting<by_plant> a = setting("a", "1", 0, {0, 1}, "a"), b = setting("a", "1", 0, {0, 1}, "b");)",
        R"(Setting<by_plant> a = setting("a", "1", 0, {0, 1}, "a"), b = setting("b", "1", 0, {0, 1}, "b");)", word);
    check_declaration(glue_line + R"(Line<ply> paste = line("glue", "kg", material, per_unit, "Paste");)",
                      glue_line + R"(Line<ply> paste = line("paste", "kg", material, per_unit, "Paste");)", word);
    check_declaration(R"(Loss a = loss("setup", "Setup"), b = loss("setup", "Set up again");)",
                      R"(Loss a = loss("setup", "Setup"), b = loss("rejects", "Rejects");)", word);
}

TEST_CASE("a column taken for a number does not compile") {
    check_refused(model(fed, "[[maybe_unused]] const double pieces = f[fed];"),
                  model(fed, "[[maybe_unused]] const double pieces = f[fed][corrugator];"),
                  {"cannot convert 'flutebook::Column<flutebook::step>' to 'const double'",
                   "no viable conversion from 'Column<(flutebook::Axis)2U>' to 'const double'"});
}

TEST_CASE("an index of one axis does not open a column of another") {
    check_refused(model(papers, "for (auto k : f.steps()) (void)f[paper][k];"),
                  model(papers, "for (auto p : f.plies()) (void)f[paper][p];"),
                  {"no match for 'operator[]' (operand types are 'flutebook::Column<flutebook::ply>' and "
                   "'flutebook::Index<flutebook::step>')",
                   "no viable overloaded operator[] for type 'Column<(flutebook::Axis)1U>'"});
}

TEST_CASE("a bare number is no place in a column") {
    check_refused(model(fed, "(void)f[fed][0];"), model(fed, "(void)f[fed][corrugator];"),
                  {"no match for 'operator[]' (operand types are 'flutebook::Column<flutebook::step>' and 'int')",
                   "no viable overloaded operator[] for type 'Column<(flutebook::Axis)2U>'"});
}

TEST_CASE("a line is not charged at a place of another axis") {
    check_refused(model(glue_line, "for (auto p : f.plies()) f.charge(glue, p, 1, 2);"),
                  model(glue_line, "for (auto k : f.steps()) f.charge(glue, k, 1, 2);"),
                  {"no matching function for call to 'flutebook::Frame::charge(",
                   "no matching member function for call to 'charge'"});
}

TEST_CASE("a place outside an axis cannot be named") {
    check_refused(model(fed, "(void)f[fed][Index<step>(99)];"), model(fed, "(void)f[fed][Index<step>()];"),
                  {"is private within this context", "calling a private constructor"});
}

TEST_CASE("a usual range outside the range does not compile") {
    check_declaration(R"(Setting<by_plant> price = setting("price", "money/kg", 1, {0, 100}, "glue").usual({1, 101});)",
                      R"(Setting<by_plant> price = setting("price", "money/kg", 1, {0, 100}, "glue").usual({1, 5});)",
                      "a_usual_range_lies_outside_its_range");
}

TEST_CASE("a setting of the plant stepped over a number of each step does not compile") {
    check_declaration(
        fed + R"(Setting<by_plant> rate = setting("rate", "money", 1, {0, 9}, "a rate").stepped_over(fed);)",
        fed + R"(Setting<by_machine> rate = setting("rate", "money", 1, {0, 9}, "a rate").stepped_over(fed);)",
        "a_setting_is_stepped_over_a_need_of_another_axis");
}

TEST_CASE("a setting by choice without a choice does not compile") {
    const std::string zones =
        "static constexpr const char* names[] = {\"north\", \"south\"};\n"
        R"(Setting<by_request> zone = choice("zone", names, 0, "where it goes");)";
    check_declaration(
        zones + R"(Setting<by_choice> rate = setting("rate", "money", 1, {0, 9}, "a rate");)",
        zones + R"(Setting<by_choice> rate = setting("rate", "money", 1, {0, 9}, "a rate").keyed_by(zone);)",
        "a_setting_is_keyed_by_something_else_than_a_choice");
}

TEST_CASE("a number that is needed cannot be written, nor one that is provided be read") {
    check_refused(
        model(R"(Need<order> n = need("own.n", "1", "n");)", "f.set(n, 1);"),
        model(R"(Provide<order> n = provide("own.n", "1", "n");)", "f.set(n, 1);"),
        {"no matching function for call to 'flutebook::Frame::set(", "no matching member function for call to 'set'"});
    check_refused(model(R"(Provide<order> n = provide("own.n", "1", "n");)", "(void)f[n];"),
                  model(R"(Need<order> n = need("own.n", "1", "n");)", "(void)f[n];"),
                  {"no match for 'operator[]' (operand types are 'flutebook::Frame' and 'const flutebook::Provide<",
                   "no viable overloaded operator[] for type 'flutebook::Frame'"});
}

TEST_CASE("a model that remembers anything does not compile") {
    check_refused(model("int evaluated = 0;", "++evaluated;"), model("int evaluated = 0;", "(void)evaluated;"),
                  {"increment of member 'Tried::evaluated' in read-only object",
                   "cannot assign to non-static data member within const member function 'evaluate'"});
}

TEST_CASE("a list past its end does not compile") {
    const auto needs = [](int count) {
        std::string text;
        for (int i = 0; i < count; ++i)
            text +=
                "Need<order> n" + std::to_string(i) + " = need(\"own.n" + std::to_string(i) + "\", \"1\", \"n\");\n";
        return text;
    };
    check_declaration(needs(65), needs(64), "needs_");
}
