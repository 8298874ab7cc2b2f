// Header rows, numbers and fields: what a document says before anybody asks the plant.
#include <catch2/catch.hpp>

#include "host/base/decimal.hpp"
#include "host/production/entry_from_row.hpp"
#include "host/production/scrap.hpp"
#include "tests/unit/production/documents_bench.hpp"

using namespace flutebook;
using namespace flutebook::fixture;
using production::DocumentColumn;
using production::Kind;

namespace {

// The kind of a header row, or why it is none.
std::string kind_of(const std::string& header) {
    const TextFile file(header + "\n");
    const auto opened = production::Document::open(file.path());
    if (const auto* none = std::get_if<production::Document::UnreadableDocument>(&opened)) return none->why;
    return name_of(std::get<production::Document>(opened).kind());
}

production::DocumentRow only_row(const std::string& text) {
    auto lines = read_lines(text);
    REQUIRE(lines.size() == 1);
    if (const auto* objections = std::get_if<production::RowErrors>(&lines[0].outcome)) FAIL(objections->front().text);
    return std::get<production::DocumentRow>(lines[0].outcome);
}

std::string objection_to(const std::string& text) {
    const auto lines = read_lines(text);
    const auto* objections = std::get_if<production::RowErrors>(&lines.back().outcome);
    return objections == nullptr ? "" : objections->front().column + ": " + objections->front().text;
}

}  // namespace

TEST_CASE("every document is known by its header row, with a note or without") {
    const std::pair<std::string, std::string> headers[] = {
        {paper_header, "paper"},
        {corrugator_header, "corrugator-run"},
        {shared_web_header, "corrugator-run"},
        {own_layout_header, "corrugator-run"},
        {converter_header, "converter-run"},
        {scrap_header, "weighed-scrap"},
        {bale_header, "bale"},
        {ticket_header, "ticket"},
        {"ref,date,mill,grade,kg,moisture,per_tonne", "ticket"},
        {cost_header, "centre-cost"},
        {count_header, "count"},
    };
    for (const auto& [header, kind] : headers) {
        CHECK(kind_of(header) == kind);
        CHECK(kind_of(header + ",note") == kind);
    }
}

TEST_CASE("a header row of no document is told what was probably meant") {
    CHECK(kind_of("ref,date,shift,corrugator,paper,kilos") ==
          "found the header row `ref,date,shift,corrugator,paper,kilos`; expected the header row "
          "ref,date,shift,corrugator,paper,kg");
    CHECK(kind_of("date,ref,shift,grade,kg") ==
          "found the header row `date,ref,shift,grade,kg`; expected the header row ref,date,shift,grade,kg");
    CHECK(kind_of("hello") == "found the header row `hello`; expected the header row of a document");
    CHECK(kind_of(paper_header + ",note,note") != "paper");
    CHECK(kind_of("") == "found nothing in it; expected a header row");
}

TEST_CASE("numbers are plain decimals, and nothing that could be read in two ways") {
    const std::pair<const char*, double> plain[] = {{"0", 0},        {"12", 12},       {"-7", -7}, {"1.50", 1.5},
                                                    {"0.001", 1e-3}, {"12,25", 12.25}, {"-0", 0}};
    for (const auto& [text, value] : plain) {
        CAPTURE(text);
        const auto decimal = base::read_decimal(text);
        REQUIRE(decimal);
        CHECK(decimal->value == value);
        CHECK_FALSE(std::signbit(decimal->value) != (value < 0));
    }
    for (const auto* text : {"", "-", "010", "1e3", ".5", "5.", "1 000", "1.000,5", "1,000,000", "+1", "0x10", "nan",
                             "inf", "1.5kg", "--1", "1-", "12345678901234567890123456789012345678901"}) {
        CAPTURE(text);
        CHECK_FALSE(base::read_decimal(text));
    }
}

TEST_CASE("a decimal comma is read where semicolons part the fields") {
    const auto row = only_row("ref;date;shift;corrugator;paper;kg\nP1;2026-10-01;early;C1;KL140;1234,5\n");
    CHECK(row.value(DocumentColumn::kg) == 1234.5);
    CHECK(objection_to(paper_header + "\nP1,2026-10-01,early,C1,KL140,\"1234,5\"\n") ==
          "kg: found `1234,5`; expected a decimal point");
}

TEST_CASE("a file that writes decimals with a comma and with a point is refused where it changes") {
    const std::string file =
        "ref;date;shift;corrugator;paper;kg\n"
        "P1;2026-10-01;early;C1;KL140;12,5\n"
        "P2;2026-10-01;early;C1;KL140;700\n"
        "P3;2026-10-01;early;C1;KL140;1.000\n";
    CHECK(objection_to(file) == "kg: found `1.000`; expected a decimal comma, as in line 2 of this file");
}

TEST_CASE("a point that may part thousands is refused between semicolons, unless points were decimals before") {
    const std::string header = "ref;date;shift;corrugator;paper;kg\n";
    const std::string first = "P1;2026-10-01;early;C1;KL140;550\n";
    CHECK(objection_to(header + first + "P2;2026-10-01;early;C1;KL140;1.550\n") ==
          "kg: found `1.550`, whose point may part thousands between semicolons; expected 1550 or 1,550");
    CHECK(objection_to(header + "P2;2026-10-01;early;C1;KL140;-12.000\n") ==
          "kg: found `-12.000`, whose point may part thousands between semicolons; expected -12000 or -12,000");
    CHECK(objection_to(header + first + "P2;2026-10-01;early;C1;KL140;0.550\n").empty());
    CHECK(objection_to(header + "P1;2026-10-01;early;C1;KL140;12.5\nP2;2026-10-01;early;C1;KL140;1.550\n").empty());
    CHECK(objection_to(paper_header + "\nP1,2026-10-01,early,C1,KL140,1.550\n").empty());
}

TEST_CASE("a row has one content, however it was written") {
    const auto plain = only_row(paper_header + "\nP1,2026-10-01,early,C1,KL140,1234.5\n");
    CHECK(plain.content == "ref=P1\ndate=2026-10-01\nshift=early\ncorrugator=C1\npaper=KL140\nkg=1234.5\n");
    const auto other = only_row(
        "\xEF\xBB\xBFref; date;shift;corrugator;paper;kg;note\r\n"
        "\"P1\";2026-10-01; early ;C1;\"KL140\";1234,500;\r\n");
    CHECK(other.content == plain.content);
    const auto noted = only_row(paper_header + ",note\nP1,2026-10-01,early,C1,KL140,1234.5,late: found in the store\n");
    CHECK(noted.content == plain.content + "note=late: found in the store\n");
    CHECK(noted.text(DocumentColumn::note) == "late: found in the store");
}

TEST_CASE("all that is wrong with the fields of a row is told together") {
    const auto lines = read_lines(corrugator_header + "\n,2026-02-30,early,C1,4711,1850,0,1e3,-1,12.5\n");
    const auto& objections = std::get<production::RowErrors>(lines[0].outcome);
    std::vector<std::string> texts;
    for (const auto& objection : objections) texts.push_back(objection.column + ": " + objection.text);
    CHECK(texts == std::vector<std::string>{
                       "ref: found nothing; expected a name of at most 80 bytes",
                       "date: found `2026-02-30`; expected a day as YYYY-MM-DD, from the year 2000 to 2999",
                       "outs: found `0`; expected a whole number from 1 to 1000",
                       "metres: found `1e3`; expected a number from 0 to 1000000 in plain figures",
                       "order_change_metres: found `-1`; expected a number from 0 to 1000000",
                       "good_sheets: found `12.5`; expected a whole number from 0 to 1000000000",
                   });
}

TEST_CASE("fields that are too many, too few or too long are refused") {
    CHECK(objection_to(bale_header + "\nB1,2026-10-01,early,4.01.00\n") ==
          ": found 4 fields; expected 5, as in the header row");
    CHECK(objection_to(bale_header + "\nB1,2026-10-01,early,4.01.00,500,so what\n") ==
          ": found 6 fields; expected 5, as in the header row");
    const std::string name(81, 'x');
    CHECK(objection_to(bale_header + "\n" + name + ",2026-10-01,early,4.01.00,500\n").rfind("ref: found `xxx", 0) == 0);
    const std::string note(501, 'x');
    CHECK(objection_to(bale_header + ",note\nB1,2026-10-01,early,4.01.00,500," + note + "\n")
              .rfind("note: found `xxx", 0) == 0);
}

TEST_CASE("a day of another millennium is a slip of the keyboard") {
    for (const std::string day : {"0206-10-01", "1999-12-31", "3026-10-01"})
        CHECK(objection_to(bale_header + "\nB1," + day + ",early,4.01.00,500\n") ==
              "date: found `" + day + "`; expected a day as YYYY-MM-DD, from the year 2000 to 2999");
}

TEST_CASE("a moisture in percent is told that it is a share") {
    CHECK(objection_to(ticket_header + "\nT1,2026-10-01,Northweir,4.01.00,,24000,14,85\n") ==
          "moisture: found `14`; expected a share from 0 to 0.99: 12 % is 0.12");
}

TEST_CASE("grams are rounded half away from zero, and parts add up to their whole") {
    CHECK(production::to_grams(1.0005).count() == 1001);
    CHECK(production::to_grams(-1.0005).count() == -1001);
    CHECK(production::to_grams(0.0004).count() == 0);
    // Three thirds of a kilogram lack a gram, which the largest takes: the first of equals.
    const auto thirds = production::parts_of(Grams::of(1000), {1.0 / 3, 1.0 / 3, 1.0 / 3});
    CHECK(thirds == std::vector<Grams>{Grams::of(334), Grams::of(333), Grams::of(333)});
    const auto halves = production::parts_of(Grams::of(10), {0.0005, 0.0095});
    CHECK(halves == std::vector<Grams>{Grams::of(1), Grams::of(9)});
}
