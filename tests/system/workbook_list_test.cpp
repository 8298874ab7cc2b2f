// Lists that are workbooks: what is read of one, and what is refused.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <string>

#include "tests/system/face.hpp"
#include "tests/system/list_plant.hpp"
#include "tests/system/made_workbook.hpp"

using namespace flutebook::fixture;
using Json = nlohmann::ordered_json;

namespace {

const std::vector<std::string> columns = {"request", "date",  "style",    "length", "width",
                                          "height",  "board", "quantity", "margin"};

// A plain item whose quantity is this cell (`<c r="H2" …>`).
std::string with_quantity(const std::string& cell) {
    std::string row = inline_row(2, {"A", "2026-10-15", "0201", "400", "300", "250", "B-140"});
    return inline_row(1, columns) + row.substr(0, row.size() - 6) + cell + "<c r=\"I2\"><v>0.18</v></c></row>";
}

Ended quote_bytes(const ListPlant& plant, const std::string& bytes) {
    return ask_at(plant.folder(), {"quote", plant.write("list.xlsx", bytes), "--json"});
}

void check_refused(const std::string& bytes, const std::string& reason) {
    const ListPlant plant;
    const Ended ended = quote_bytes(plant, bytes);
    INFO(ended.errors);
    CHECK(ended.exit_code == 1);
    CHECK(ended.errors.find(reason) != std::string::npos);
}

}  // namespace

TEST_CASE("a workbook's first sheet is read with shared texts, days by their style, and kept results of formulas") {
    MadeWorkbook book(inline_row(1, columns) +
                      "<row r=\"2\"><c r=\"A2\" t=\"s\"><v>0</v></c><c r=\"B2\" s=\"1\"><v>46310</v></c>"
                      "<c r=\"C2\"><v>201</v></c><c r=\"D2\"><v>400.00000000000006</v></c><c r=\"E2\"><v>300</v></c>"
                      "<c r=\"F2\"><f>200+50</f><v>250</v></c><c r=\"G2\" t=\"str\"><f>\"B\"</f><v>B-140</v></c>"
                      "<c r=\"H2\"><v>500</v></c><c r=\"I2\" s=\"2\"><v>0.18</v></c></row>");
    book.set("xl/sharedStrings.xml", "<sst><si><r><t>R-</t></r><r><t>7</t></r><rPh><t>no</t></rPh></si></sst>");
    book.set("xl/styles.xml",
             "<styleSheet><numFmts><numFmt numFmtId=\"164\" formatCode=\"dd/mm/yyyy\"/></numFmts><cellStyleXfs><xf "
             "numFmtId=\"14\"/></cellStyleXfs><cellXfs><xf numFmtId=\"0\"/><xf numFmtId=\"164\"/><xf "
             "numFmtId=\"10\"/></cellXfs></styleSheet>");
    const ListPlant plant;
    const Ended ended = quote_bytes(plant, book.bytes());
    INFO(ended.errors);
    REQUIRE(ended.exit_code == 0);
    const Json row = Json::parse(ended.output)["rows"][0];
    CHECK(row["request"] == "R-7");
    const std::string same = plant.write("list.csv",
                                         "request,date,style,length,width,height,board,quantity,margin\n"
                                         "R-7,2026-10-15,0201,400,300,250,B-140,500,0.18\n");
    const Ended from_csv = ask_at(plant.folder(), {"quote", same, "--json"});
    CHECK(row["price_per_thousand"] == Json::parse(from_csv.output)["rows"][0]["price_per_thousand"]);
}

TEST_CASE("a cell of a workbook that is neither text nor number nor day is refused by its name") {
    check_refused(MadeWorkbook(with_quantity("<c r=\"H2\" t=\"e\"><v>#N/A</v></c>")).bytes(), "list.xlsx:H2: an error");
    check_refused(MadeWorkbook(with_quantity("<c r=\"H2\" t=\"b\"><v>1</v></c>")).bytes(),
                  "list.xlsx:H2: a truth value");
    check_refused(MadeWorkbook(with_quantity("<c r=\"H2\"><f>1+1</f></c>")).bytes(), "list.xlsx:H2: a formula without");
    check_refused(MadeWorkbook(with_quantity("<c r=\"H2\" t=\"s\"><v>9</v></c>")).bytes(),
                  "list.xlsx:H2: a shared text");
    check_refused(MadeWorkbook(with_quantity("<c r=\"H2\" t=\"inlineStr\"><is><t>5\n0</t></is></c>")).bytes(),
                  "list.xlsx:H2: found");
    check_refused(MadeWorkbook(with_quantity("<c r=\"H2\"><v>-5</v></c>")).bytes(), "list.xlsx:H2: quantities[");
}

TEST_CASE("a workbook that unpacks to more than a list may hold is refused, whatever it says of its size") {
    MadeWorkbook texts(with_quantity("<c r=\"H2\"><v>500</v></c>"));
    texts.set_bomb("xl/sharedStrings.xml", std::uint64_t{100} << 20U);
    CHECK(texts.bytes().size() < 1000000);
    check_refused(texts.bytes(), "unpacks to more than 64 MB");
}

TEST_CASE("a workbook whose part declares a document type is refused, so that no entity is ever expanded") {
    MadeWorkbook book(with_quantity("<c r=\"H2\"><v>500</v></c>"));
    std::string type = "<!DOCTYPE sst [<!ENTITY a0 \"ha\">";
    for (int i = 1; i < 30; ++i)
        type +=
            "<!ENTITY a" + std::to_string(i) + " \"&a" + std::to_string(i - 1) + ";&a" + std::to_string(i - 1) + ";\">";
    book.set("xl/sharedStrings.xml", type + "]><sst><si><t>&a29;</t></si></sst>");
    check_refused(book.bytes(), "declares a document type");
}

TEST_CASE("a workbook with macros is refused") {
    MadeWorkbook book(with_quantity("<c r=\"H2\"><v>500</v></c>"));
    book.set("xl/vbaProject.bin", "x");
    check_refused(book.bytes(), "has macros");
}

TEST_CASE("an encrypted workbook is refused, of either kind") {
    MadeWorkbook book(with_quantity("<c r=\"H2\"><v>500</v></c>"));
    book.set_encrypted();
    check_refused(book.bytes(), "is encrypted");
    check_refused("\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1 and more", "is encrypted, or a workbook of the old kind");
}

TEST_CASE("a workbook that is broken off at any byte is refused or read as it was, and never ends the program") {
    const std::string whole = MadeWorkbook(with_quantity("<c r=\"H2\"><v>500</v></c>")).bytes();
    const ListPlant plant;
    CHECK(quote_bytes(plant, whole).exit_code == 0);
    for (std::size_t length = 0; length < whole.size(); length += whole.size() / 12 + 1) {
        const Ended ended = quote_bytes(plant, whole.substr(0, length));
        CHECK(ended.exit_code == 1);
        CHECK(!ended.errors.empty());
    }
    std::string damaged = whole;
    damaged.replace(damaged.find("</sheetData>"), 12, "</sheetDatb>");
    check_refused(damaged, "list.xlsx: ");
}

TEST_CASE("what a list's answer holds in a workbook is read back as the same list, and no text of it is a formula") {
    const ListPlant plant;
    const std::string list = plant.write("list.csv",
                                         "request,date,customer,style,length,width,height,board,quantity,margin\n"
                                         "A,2026-10-15,\"=HYPERLINK(1)\",0201,400,300,250,B-140,500,0.18\n"
                                         "@B,2026-10-15,+1,0201,400,300,250,B-140,700,0.18\n");
    const std::string book = plant.folder() + "/out.xlsx", again = plant.folder() + "/again.csv",
                      straight = plant.folder() + "/straight.csv";
    CHECK(ask_at(plant.folder(), {"quote", list, "-o", book}).exit_code == 0);
    CHECK(ask_at(plant.folder(), {"quote", book, "-o", again}).exit_code == 0);
    CHECK(ask_at(plant.folder(), {"quote", list, "-o", straight}).exit_code == 0);
    CHECK(plant.read(again) == plant.read(straight));
    CHECK(plant.read(straight).find("\"'=HYPERLINK(1)\"") != std::string::npos);
    CHECK(plant.read(book).find("<f>") == std::string::npos);
}
