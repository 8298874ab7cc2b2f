// A quote's workbook, recalculated by a spreadsheet program: LibreOffice, with every cached result set to 0 and told to
// calculate when it loads, or it would only read back what was written.
#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <sstream>

#include "host/orders/request.hpp"
#include "host/quoting/quote.hpp"
#include "host/render/formula_book.hpp"
#include "host/workbooks/quote_workbook.hpp"
#include "host/workplace/workplace.hpp"
#include "tests/system/face.hpp"

using namespace flutebook;
using namespace flutebook::fixture;
using Catch::Matchers::Contains;
namespace fs = std::filesystem;

namespace {

constexpr const char* office = "/usr/bin/soffice";

std::string bytes_of(const std::string& file) {
    std::ostringstream text;
    text << std::ifstream(file, std::ios::binary).rdbuf();
    return text.str();
}

// A quote and its workbook, made in this process.
struct QuotedBook {
    workplace::Workplace place;
    orders::Request request;
    answers::RequestAnswer answer;
    render::FormulaBook book;

    QuotedBook(const std::string& plant, const std::string& file)
        : place(workplace::open(plant)),
          request(orders::read_request(place.plant, file)),
          answer(quoting::quote(place.plant, place.engine, request, {})),
          book(workbooks::quote_workbook(place.plant, place.engine, answer, 1)) {}
};

std::size_t forget_results(render::FormulaBook& book) {
    std::size_t formulas = 0;
    for (render::BookSheet& sheet : book.sheets)
        for (auto& row : sheet.rows)
            for (render::BookCell& cell : row)
                if (auto* formula = std::get_if<render::BookFormula>(&cell.value)) {
                    formula->result = 0;
                    ++formulas;
                }
    return formulas;
}

// Cells of each sheet as the spreadsheet program works them out, row by row.
using Cells = std::vector<std::vector<std::string>>;

std::vector<std::string> cells_of(const std::string& line) {
    std::vector<std::string> cells(1);
    bool is_quoted = false;
    for (const char c : line) {
        if (c == '"')
            is_quoted = !is_quoted;
        else if (c == ',' && !is_quoted)
            cells.emplace_back();
        else
            cells.back() += c;
    }
    return cells;
}

std::map<std::string, Cells> recalculated(const std::string& folder, const render::FormulaBook& book) {
    const fs::path profile = fs::path(folder) / "profile" / "user";
    fs::create_directories(profile);
    std::ofstream(profile / "registrymodifications.xcu") << R"(<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>)";
    REQUIRE(render::write_formula_book(folder + "/book.xlsx", book, 2026).empty());
    const Ended ended =
        run({{office, "-env:UserInstallation=file://" + folder + "/profile", "--headless", "--convert-to",
              "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1", "--outdir",
              folder + "/csv", folder + "/book.xlsx"}});
    INFO(ended.output << ended.errors);
    REQUIRE(ended.exit_code == 0);
    std::map<std::string, Cells> result;
    for (const render::BookSheet& sheet : book.sheets)
        for (const std::string& line : lines_of(bytes_of(folder + "/csv/book-" + sheet.name + ".csv")))
            result[sheet.name].push_back(cells_of(line));
    return result;
}

double number_in(const Cells& cells, std::size_t row, std::size_t column) {
    return std::strtod(cells.at(row - 1).at(column).c_str(), nullptr);
}

}  // namespace

TEST_CASE("recalculated from zeroed results, a workbook has every amount, cost, price and profit to the last digit") {
    if (!fs::exists(office)) {
        WARN("skipped: no " << office << " on this machine");
        return;
    }
    for (const char* number : {"R-1001", "R-1007"}) {
        CAPTURE(number);
        const PlantCopy plant;
        QuotedBook quoted(demo_plant(), demo_request(number));
        REQUIRE(forget_results(quoted.book) > 100);
        const auto sheets = recalculated(plant.folder(), quoted.book);
        std::size_t amounts = 0;
        for (std::size_t i = 0; i < quoted.answer.quantities.size(); ++i) {
            const answers::Quote& quote = *quoted.answer.quantities[i].quote;
            const Cells& costs = sheets.at("Cost " + std::to_string(i + 1));
            for (std::size_t l = 0; l < quote.lines.size(); ++l, ++amounts) {
                CAPTURE(quote.lines[l].line);
                CHECK(number_in(costs, l + 2, 7) == quote.lines[l].amount.to_double());
            }
            CHECK(number_in(costs, quote.lines.size() + 2, 7) == quote.cost.to_double());
            const Cells& ladder = sheets.at("Quote");
            CHECK(number_in(ladder, 1, i + 1) == quote.quantity);
            CHECK(number_in(ladder, 2, i + 1) == quote.cost.to_double());
            CHECK(number_in(ladder, 4, i + 1) == quote.price_per_thousand.to_double());
            CHECK(number_in(ladder, 5, i + 1) == quote.sale.order_value.to_double());
            CHECK(number_in(ladder, 6, i + 1) == quote.sale.profit.to_double());
        }
        CHECK(amounts > 60);
    }
}

TEST_CASE("a workbook's price follows an input that is changed in it, through links and formulas alone") {
    if (!fs::exists(office)) {
        WARN("skipped: no " << office << " on this machine");
        return;
    }
    const PlantCopy plant;
    QuotedBook quoted(demo_plant(), demo_request("R-1001"));
    static_cast<void>(forget_results(quoted.book));
    bool is_changed = false;
    for (render::BookSheet& sheet : quoted.book.sheets)
        for (auto& row : sheet.rows)
            if (sheet.name == "Inputs" && std::get<std::string>(row[0].value) == "margin" && !is_changed) {
                row[2].value = 0.5;
                is_changed = true;
            }
    REQUIRE(is_changed);
    const auto sheets = recalculated(plant.folder(), quoted.book);
    const answers::Quote& quote = *quoted.answer.quantities[0].quote;
    CHECK(number_in(sheets.at("Quote"), 4, 1) ==
          Money::rounded(quote.cost.to_double() / quote.quantity * 1000 / 0.5, 2)->to_double());
}

TEST_CASE("the program writes that workbook, with its results in it, the same bytes each time") {
    const PlantCopy plant;
    const std::string file = plant.folder() + "/book.xlsx", again = plant.folder() + "/again.xlsx";
    REQUIRE(ask_at(demo_plant(), {"quote", demo_request("R-1001"), "--xlsx", file}).exit_code == 0);
    REQUIRE(render::write_formula_book(again, QuotedBook(demo_plant(), demo_request("R-1001")).book, 2026).empty());
    CHECK(bytes_of(file) == bytes_of(again));
    CHECK(bytes_of(file).size() > 10000);
    CHECK(ask_at(demo_plant(), {"quote", demo_request("R-1001"), "--xlsx", file}).exit_code == 1);
    CHECK(ask_at(demo_plant(), {"quote", demo_request("R-1001"), demo_request("R-1004"), "--xlsx", again, "--replace"})
              .exit_code == 2);
}

TEST_CASE(
    "each number that a line rests on stands once in a workbook, with its file, line and column where it has one") {
    const QuotedBook quoted(demo_plant(), demo_request("R-1001"));
    const render::BookSheet* inputs = nullptr;
    for (const render::BookSheet& sheet : quoted.book.sheets)
        if (sheet.name == "Inputs") inputs = &sheet;
    REQUIRE(inputs != nullptr);
    std::size_t placed = 0;
    std::set<std::string> seen;
    for (const auto& row : inputs->rows) {
        const auto text = [&](std::size_t c) { return std::get<std::string>(row.at(c).value); };
        if (text(4) == "kind" || text(4) == "request") continue;
        CHECK(seen.insert(text(0) + "|" + text(1) + "|" + fmt::format("{}", std::get<double>(row[2].value))).second);
        if (text(6).find(".yaml:") != std::string::npos) ++placed;
    }
    CHECK(placed > 30);
    std::size_t links = 0;
    for (const render::BookSheet& sheet : quoted.book.sheets)
        for (const auto& row : sheet.rows)
            for (const render::BookCell& cell : row)
                if (const auto* formula = std::get_if<render::BookFormula>(&cell.value))
                    links += formula->text.rfind("=Inputs!", 0) == 0 ? 1U : 0U;
    CHECK(links > 20);
}

TEST_CASE("a workbook, a page and an offer are written in one run, and a list takes neither workbook nor offer") {
    const PlantCopy plant;
    const std::string book = plant.folder() + "/a.xlsx", page = plant.folder() + "/a.html",
                      offer = plant.folder() + "/o.html";
    REQUIRE(ask_at(demo_plant(), {"quote", demo_request("R-1001"), "--xlsx", book, "--html", page, "--offer", offer})
                .exit_code == 0);
    CHECK((fs::exists(book) && fs::exists(page) && fs::exists(offer)));
    CHECK(ask_at(demo_plant(), {"quote", "list.csv", "--xlsx", book}).exit_code == 2);
    CHECK(ask_at(demo_plant(), {"quote", "list.csv", "--offer", offer}).exit_code == 2);
}
