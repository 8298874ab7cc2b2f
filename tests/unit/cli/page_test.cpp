// Text and tables on a page of 100 columns.
#include <rapidcheck.h>

#include <catch2/catch.hpp>
#include <cstdint>

#include "host/render/table.hpp"
#include "host/render/text.hpp"

using namespace flutebook::render;

TEST_CASE("a character of several bytes takes one column") {
    CHECK(width_of("Kühn & Söhne") == 12);
    CHECK(cut("Kühn & Söhne", 9) == "Kühn &...");
    CHECK(cut("Kühn", 4) == "Kühn");
    CHECK(cut("abcdef", 2) == "..");
}

TEST_CASE("nothing that moves a terminal's cursor gets onto the page") {
    CHECK(cleaned("a\x1b[31mb\nc\td\x7f") == "a [31mb c d ");
    CHECK(cleaned("a\xc2\x9b"
                  "31mb") == "a 31mb");
    CHECK(cleaned("Söhne") == "Söhne");
    Table table({Align::left});
    table.add({"a\rb"});
    CHECK(table.text() == "a b\n");
}

TEST_CASE("text is broken between words, and a long word stays whole") {
    CHECK(wrapped("one two three", 7) == std::vector<std::string>{"one two", "three"});
    CHECK(wrapped("a veryverylongword b", 5) == std::vector<std::string>{"a", "veryverylongword", "b"});
    CHECK(wrapped("", 10) == std::vector<std::string>{""});
}

TEST_CASE("lines after the first hang under its text") {
    const std::string text(60, 'x');
    CHECK(hanging("  from: ", text + " " + text) == "  from: " + text + "\n        " + text + "\n");
}

TEST_CASE("a list is broken between its items alone") {
    const std::string item = "run.fed " + std::string(50, 'x');
    CHECK(hanging("- ", std::vector<std::string>{item, item}) == "- " + item + ",\n  " + item + "\n");
    CHECK(hanging("- ", std::vector<std::string>{}).empty());
}

TEST_CASE("two texts stand at the edges of the page, or below each other") {
    CHECK(edges("left", "right") == "left" + std::string(91, ' ') + "right\n");
    CHECK(edges(std::string(60, 'l'), std::string(60, 'r')) ==
          std::string(60, 'l') + "\n" + std::string(60, 'r') + "\n");
}

TEST_CASE("numbers stand right, their points below each other where asked, and lines end without spaces") {
    Table table({Align::left, Align::decimal, Align::right}, 2);
    table.add({"", "rate", "amount"});
    table.add({"paper", "0.668", "1 082.4687"});
    table.add({"hours", "240", "9.5000"});
    table.add({"none"});
    table.stroke({2});
    table.add({"sum", "", "1 091.9687"});
    CHECK(table.text() ==
          "            rate      amount\n"
          "  paper    0.668  1 082.4687\n"
          "  hours  240          9.5000\n"
          "  none\n"
          "                  ----------\n"
          "  sum             1 091.9687\n");
}

TEST_CASE("where a row would leave the page the flexible column gives way, and no number does") {
    Table table({Align::flexible, Align::right});
    table.add({std::string(120, 'x'), "123 456.7890"});
    CHECK(table.text() == std::string(83, 'x') + "...  123 456.7890\n");
}

TEST_CASE("the first cell runs on over empty cells before anything is cut") {
    Table table({Align::flexible, Align::left, Align::right});
    const std::string where(40, 'w');
    const std::string sum(59, 's');
    table.add({std::string(20, 'a'), where, "1"});
    table.add({sum, "", "22"});
    CHECK(table.text() == std::string(20, 'a') + "  " + where + "   1\n" + sum + "     22\n");
}

TEST_CASE("of two flexible columns the wider gives way first") {
    Table table({Align::flexible, Align::flexible, Align::right});
    table.add({std::string(90, 'a'), std::string(20, 'b'), "1"});
    const std::string text = table.text();
    CHECK(text.size() == 101);
    CHECK(text.find(std::string(20, 'b')) != std::string::npos);
}

TEST_CASE("no line of wrapped text is wider than asked, and no word is lost, for any text") {
    CHECK(rc::check("words are kept", [](const std::vector<std::uint8_t>& lengths) {
        std::string text;
        std::string words;
        for (const std::uint8_t length : lengths) {
            const std::string word(length % 12U + 1U, 'w');
            text += (text.empty() ? "" : " ") + word;
            words += word;
        }
        std::string kept;
        for (const std::string& line : wrapped(text, 20)) {
            RC_ASSERT(line.size() <= 20U);
            for (const char sign : line)
                if (sign != ' ') kept += sign;
        }
        RC_ASSERT(kept == words);
    }));
}
