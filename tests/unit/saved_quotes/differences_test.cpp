// Two trees compared: what is told as a difference, and what is none.
#include "host/saved_quotes/changes.hpp"

#include <catch2/catch.hpp>

#include "host/answers/figures.hpp"
#include "host/base/yaml/document.hpp"

using namespace flutebook;
using answers::Difference;

namespace {

base::Node yaml(const std::string& text) {
    base::Diagnostics complaints;
    const auto root = base::parse_document(text, "f.yaml", complaints);
    REQUIRE(complaints.empty());
    return *root;
}

std::string told(const std::vector<Difference>& all) {
    std::string result;
    for (const Difference& difference : all)
        result += difference.path + ": " + (difference.was ? difference.was->text : "-") + " > " +
                  (difference.now ? difference.now->text : "-") + "\n";
    return result;
}

std::vector<Difference> leaves_between(const std::string& was, const std::string& now) {
    return saved_quotes::differences(saved_quotes::leaves_of(yaml(was)), saved_quotes::leaves_of(yaml(now)));
}

}  // namespace

TEST_CASE("a file of the same values differs in nothing, however it is laid out") {
    CHECK(
        leaves_between("a: {x: 1, y: [1, 2]}\nb: two\n", "# a note\nb:   \"two\"\na:\n  y: [1, 2]\n  x: 1\n").empty());
}

TEST_CASE("a changed value is told by its path, what it was and is, and its place today") {
    const auto all = leaves_between("a: {x: 1, y: 2}\n", "a: {x: 1,\n    y: 3}\n");
    CHECK(told(all) == "a.y: 2 > 3\n");
    CHECK(all.at(0).now->place.line == 2);
    CHECK(all.at(0).now->place.column == 8);
    CHECK(all.at(0).by() == 1);
}

TEST_CASE("what was added comes in today's order and what was taken out after it") {
    CHECK(told(leaves_between("a: 1\nc: 3\n", "b: 2\nc: 4\n")) == "b: - > 2\nc: 3 > 4\na: 1 > -\n");
}

TEST_CASE("a list of plain values is one value") {
    CHECK(told(leaves_between("w: [1850, 2050]\n", "w: [1850, 2250, 2050]\n")) ==
          "w: [1850, 2050] > [1850, 2250, 2050]\n");
}

TEST_CASE("a price is known by the day it counts from, so that one put before it changes no other") {
    CHECK(told(leaves_between("price: [{from: 2026-09-01, per_tonne: 668}]\n",
                              "price: [{from: 2026-01-01, per_tonne: 640}, {from: 2026-09-01, per_tonne: 668}]\n")) ==
          "price[2026-01-01].from: - > 2026-01-01\nprice[2026-01-01].per_tonne: - > 640\n");
}

TEST_CASE("a model is known by its name, and a model without settings is there all the same") {
    CHECK(told(leaves_between("plugins:\n  - run: {}\n  - ink: {price: 4}\n",
                              "plugins:\n  - ink: {price: 5}\n  - tax: {}\n")) ==
          "plugins.ink.price: 4 > 5\nplugins.tax: - > {}\nplugins.run: {} > -\n");
}

TEST_CASE("a list of mixed entries is compared entry by entry") {
    CHECK(told(leaves_between("plies: [KL, {flute: B, paper: SC}, TL]\n",
                              "plies: [KL, {flute: C, paper: SC}, TL]\n")) == "plies[2].flute: B > C\n");
}

TEST_CASE("figures are told as they are written in the document, and by how much") {
    answers::Quote was{}, now{};
    was.cost = Money::of_ten_thousandths(3273000);
    now.cost = Money::of_ten_thousandths(3351000);
    was.route = {"FG1"};
    now.route = {"DC1", "FG1"};
    was.fed = now.fed = {0, 547};
    const auto all = saved_quotes::differences(answers::figures_of(was), answers::figures_of(now));
    CHECK(told(all) == "route: [FG1] > [DC1, FG1]\ncost: 327.3 > 335.1\n");
    CHECK_FALSE(all.at(0).by().has_value());
    CHECK(all.at(1).by() == 7.8);
}

TEST_CASE("a difference smaller than a billionth is told as it is") {
    answers::Quote was{}, now{};
    was.mass.issued_kg = 1e-12;
    now.mass.issued_kg = 3e-12;
    const auto all = saved_quotes::differences(answers::figures_of(was), answers::figures_of(now));
    CHECK(told(all) == "mass_kg.issued: 1e-12 > 3e-12\n");
    CHECK(all.at(0).by() == 3e-12 - 1e-12);
}
