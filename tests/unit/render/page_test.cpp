// Text and tables on a page of 100 columns.
#include <rapidcheck.h>

#include <catch2/catch.hpp>
#include <cstdint>

#include "host/render/text.hpp"
#include "host/render/text_table.hpp"

using namespace flutebook::render;

namespace {

using ColumnKind = TableColumn::Kind;

Number significant(double value) {
    return {value, 7, Number::Form::significant};
}

}  // namespace

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
    CHECK(cleaned("a\xE2\x80\xAE"
                  "b\xFF") == "a b\xEF\xBF\xBD");
    ReportTable table{"", {{"", ColumnKind::text}}};
    table.add({"a\rb"});
    CHECK(table_text(table) == "  a b\n");
}

TEST_CASE("text is broken between words, and a long word stays whole") {
    CHECK(wrapped("one two three", 7) == std::vector<std::string>{"one two", "three"});
    CHECK(wrapped("a veryverylongword b", 5) == std::vector<std::string>{"a", "veryverylongword", "b"});
    CHECK(wrapped("", 10) == std::vector<std::string>{""});
}

TEST_CASE("text is not broken between a whole number and its fraction") {
    CHECK(wrapped("slit 15 1/4 in", 9) == std::vector<std::string>{"slit", "15 1/4 in"});
    CHECK(wrapped("a 5 b/c 1/d", 3) == std::vector<std::string>{"a 5", "b/c", "1/d"});
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

TEST_CASE("numbers stand right, their points below each other, sums below a stroke, and lines end without spaces") {
    ReportTable table{"", {{"", ColumnKind::text}, {"rate"}, {"amount"}}};
    table.add({"paper", significant(0.668), Number{1082.4687, 4}});
    table.add({"hours", significant(240), Number{9.5, 4}});
    table.add({"none"});
    table.add(TableRow::Kind::total, {"sum", {}, Number{1091.9687, 4}});
    CHECK(table_text(table) ==
          "            rate      amount\n"
          "  paper    0.668  1 082.4687\n"
          "  hours  240          9.5000\n"
          "  none\n"
          "                  ----------\n"
          "  sum             1 091.9687\n");
}

TEST_CASE("units that differ from row to row stand below each other") {
    ReportTable table{"", {{"", ColumnKind::text}, {"used"}}};
    table.add({"paper", Number{75.5, 1, Number::Form::fixed, "kg"}});
    table.add({"strap", Number{640, 0, Number::Form::fixed, "m"}});
    table.add({"pallets", Number{1, 0}});
    CHECK(table_text(table) ==
          "               used\n"
          "  paper     75.5 kg\n"
          "  strap    640   m\n"
          "  pallets    1\n");
}

TEST_CASE("a cell that says the same as the one above it is left empty on a page alone") {
    ReportTable table{"", {{"", ColumnKind::text, "", TableColumn::Repeats::hidden}, {"", ColumnKind::text}, {"kg"}}};
    table.columns.push_back({"g"});
    table.columns.back().shown = TableColumn::Shown::files;
    table.add({"Paper", "ply 1", Number{1, 0}, Number{1000, 0}});
    table.add({"Paper", "ply 2", Number{2, 0}, Number{2000, 0}});
    CHECK(table_text(table) ==
          "                kg\n"
          "  Paper  ply 1   1\n"
          "         ply 2   2\n");
    CHECK(row_names(table) == std::vector<std::string>{"Paper", "Paper"});
}

TEST_CASE("where a row would leave the page the names give way, and no number does") {
    ReportTable table{"", {{"", ColumnKind::name}, {""}}};
    table.add({std::string(120, 'x'), Number{123456.789, 4}});
    CHECK(table_text(table) == "  " + std::string(81, 'x') + "...  123 456.7890\n");
}

TEST_CASE("the first cell runs on over empty cells before anything is cut") {
    ReportTable table{"", {{"", ColumnKind::name}, {"", ColumnKind::text}, {""}}};
    const std::string where(40, 'w');
    const std::string sum(59, 's');
    table.add({std::string(20, 'a'), where, Number{1, 0}});
    table.add({sum, {}, Number{22, 0}});
    CHECK(table_text(table) == "  " + std::string(20, 'a') + "  " + where + "   1\n  " + sum + "     22\n");
}

TEST_CASE("of two columns of names the wider gives way first") {
    ReportTable table{"", {{"", ColumnKind::name}, {"", ColumnKind::name}, {""}}};
    table.add({std::string(90, 'a'), std::string(20, 'b'), Number{1, 0}});
    const std::string text = table_text(table);
    CHECK(text.size() == 101);
    CHECK(text.find(std::string(20, 'b')) != std::string::npos);
}

TEST_CASE("a sentence is broken beside its row, or below it where too little room is left") {
    const std::string word(32, 'w');
    ReportTable table{"", {{"", ColumnKind::text}, {"", ColumnKind::sentence}}};
    table.add({"name", word + " " + word + " " + word});
    CHECK(table_text(table) == "  name  " + word + " " + word + "\n        " + word + "\n");
    table.rows.clear();
    table.add({std::string(70, 'n'), word});
    CHECK(table_text(table) == "  " + std::string(70, 'n') + "\n      " + word + "\n");
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
