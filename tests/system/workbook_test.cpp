// A quote's workbook, recalculated by a spreadsheet program: LibreOffice, with every cached result set to 0 and told to
// calculate when it loads, or it would only read back what was written.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <memory>
#include <set>
#include <sstream>

#include "host/orders/request.hpp"
#include "host/quoting/quote.hpp"
#include "host/render/formula_book.hpp"
#include "host/workbooks/quote_workbook.hpp"
#include "host/workplace/workplace.hpp"
#include "tests/system/face.hpp"
#include "tests/system/set_plant.hpp"

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
          book(workbooks::quote_workbook(place.plant, place.engine, answer, {})) {}
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
using Sheets = std::map<std::string, Cells>;

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

void write_profile(const std::string& folder) {
    const fs::path profile = fs::path(folder) / "profile" / "user";
    fs::create_directories(profile);
    std::ofstream(profile / "registrymodifications.xcu") << R"(<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>)";
}

// Every result of these books is set to 0 first. One start of the program for all of them.
std::vector<Sheets> recalculated(const std::string& folder, const std::vector<render::FormulaBook*>& books) {
    write_profile(folder);
    std::vector<std::string> words = {office,
                                      "-env:UserInstallation=file://" + folder + "/profile",
                                      "--headless",
                                      "--convert-to",
                                      "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1",
                                      "--outdir",
                                      folder + "/csv"};
    for (std::size_t b = 0; b < books.size(); ++b) {
        REQUIRE(forget_results(*books[b]) > 100);
        words.push_back(folder + "/book" + std::to_string(b) + ".xlsx");
        REQUIRE(render::write_formula_book(words.back(), *books[b], 2026).empty());
    }
    const Ended ended = run({words});
    INFO(ended.output << ended.errors);
    REQUIRE(ended.exit_code == 0);
    std::vector<Sheets> result(books.size());
    for (std::size_t b = 0; b < books.size(); ++b)
        for (const render::BookSheet& sheet : books[b]->sheets) {
            const std::string file = folder + "/csv/book" + std::to_string(b) + "-" + sheet.name + ".csv";
            for (const std::string& line : lines_of(bytes_of(file))) result[b][sheet.name].push_back(cells_of(line));
        }
    return result;
}

double number_in(const Cells& cells, std::size_t row, std::size_t column) {
    return std::strtod(cells.at(row - 1).at(column).c_str(), nullptr);
}

// Of the sheet "Run": the number of that name at that step or ply.
double run_number(const Cells& cells, const std::string& name, const std::string& at, std::size_t column) {
    for (std::size_t r = 0; r < cells.size(); ++r)
        if (cells[r].at(0) == name && cells[r].at(1) == at) return number_in(cells, r + 1, column);
    FAIL("no row " << name << " " << at);
    return 0;
}

std::string step(std::size_t k) {
    return "step " + std::to_string(k);
}

void check_run(const Cells& cells, const answers::Quote& quote, std::size_t column) {
    const auto mass = [&](double kg) { return Approx(kg).epsilon(1e-12).margin(1e-12); };
    for (std::size_t k = 0; k < quote.good.size(); ++k) {
        CHECK(run_number(cells, "run.good", step(k), column) == quote.good[k]);
        if (k > 0) CHECK(run_number(cells, "run.fed", step(k), column) == quote.fed[k]);
    }
    CHECK(run_number(cells, "order.quantity", "", column) == quote.quantity);
    CHECK(run_number(cells, "web.length", "", column) == mass(quote.web_length_m));
    CHECK(run_number(cells, "mass.issued", "", column) == mass(quote.mass.issued_kg));
    CHECK(run_number(cells, "adhesive.dry", "", column) == mass(quote.mass.adhesive_kg));
    CHECK(run_number(cells, "mass.product", "", column) == mass(quote.mass.product_kg));
    std::size_t losses = 0;
    for (const auto& loss : quote.mass.losses)
        for (std::size_t k = 0; k < loss.by_step_kg.size(); ++k)
            if (loss.by_step_kg[k] != 0) {
                CAPTURE(loss.cause);
                CHECK(run_number(cells, loss.cause, step(k), column) == mass(loss.by_step_kg[k]));
                ++losses;
            }
    CHECK(losses >= 4);
    CHECK(run_number(cells, "mass.loss", "", column) == mass(quote.mass.loss_kg));
    CHECK(run_number(cells, "balance", "", column) == 0);
}

// How many amounts it checked.
std::size_t check_costs(const Cells& cells, const answers::Quote& quote) {
    for (std::size_t l = 0; l < quote.lines.size(); ++l) {
        CAPTURE(quote.lines[l].line);
        CHECK(number_in(cells, l + 2, 7) == quote.lines[l].amount.to_double());
    }
    CHECK(number_in(cells, quote.lines.size() + 2, 7) == quote.cost.to_double());
    return quote.lines.size();
}

template <typename QuoteOrSet>
void check_ladder(const Cells& ladder, const QuoteOrSet& quote, std::size_t column) {
    CHECK(number_in(ladder, 1, column) == quote.quantity);
    CHECK(number_in(ladder, 2, column) == quote.cost.to_double());
    CHECK(number_in(ladder, 4, column) == quote.price_per_thousand.to_double());
    CHECK(number_in(ladder, 5, column) == quote.sale.order_value.to_double());
    CHECK(number_in(ladder, 6, column) == quote.sale.profit.to_double());
}

// A number of the sheet "Inputs", changed as a person would.
void change_input(render::FormulaBook& book, const std::string& name, double value) {
    for (render::BookSheet& sheet : book.sheets)
        for (auto& row : sheet.rows)
            if (sheet.name == "Inputs" && std::get<std::string>(row[0].value) == name) {
                row[2].value = value;
                return;
            }
    FAIL("no input " << name);
}

// The cells of the sheet "Run" that are no formulas: "mass.issued 5", by name and column.
std::vector<std::string> values_of_run(const render::FormulaBook& book) {
    const auto sheet = std::find_if(book.sheets.begin(), book.sheets.end(),
                                    [](const render::BookSheet& one) { return one.name == "Run"; });
    REQUIRE(sheet != book.sheets.end());
    std::vector<std::string> values;
    for (std::size_t r = 2; r < sheet->rows.size(); ++r)
        for (std::size_t c = 3; c < sheet->rows[r].size(); ++c)
            if (std::holds_alternative<double>(sheet->rows[r][c].value))
                values.push_back(fmt::format("{} {}", std::get<std::string>(sheet->rows[r][0].value), c));
    return values;
}

void add_rules(PlantCopy& plant, const std::string& rules) {
    const std::string text = bytes_of(plant.folder() + "/plant.yaml");
    plant.write("plant.yaml", text + "\npricing:\n" + rules);
}

}  // namespace

TEST_CASE(
    "recalculated from zeroed results, a workbook has its run, amounts, cost, price and profit to the last digit") {
    if (!fs::exists(office)) {
        WARN("skipped: no " << office << " on this machine");
        return;
    }
    // A box, one on a board that is bought, one that is printed, cut and glued, and sheets that no converter touches.
    const std::vector<const char*> numbers = {"R-1001", "R-1006", "R-1007", "R-1014"};
    std::vector<std::unique_ptr<QuotedBook>> quoted;
    std::vector<render::FormulaBook*> books;
    for (const char* number : numbers) {
        quoted.push_back(std::make_unique<QuotedBook>(demo_plant(), demo_request(number)));
        books.push_back(&quoted.back()->book);
    }
    const PlantCopy plant;
    const std::vector<Sheets> sheets = recalculated(plant.folder(), books);
    std::size_t amounts = 0;
    for (std::size_t b = 0; b < books.size(); ++b) {
        CAPTURE(numbers[b]);
        const answers::RequestAnswer& answer = quoted[b]->answer;
        for (std::size_t i = 0; i < answer.quantities.size(); ++i) {
            const answers::Quote& quote = *answer.quantities[i].quote;
            amounts += check_costs(sheets[b].at("Cost " + std::to_string(i + 1)), quote);
            check_run(sheets[b].at("Run"), quote, i + 3);
            check_ladder(sheets[b].at("Quote"), quote, i + 1);
        }
    }
    CHECK(amounts > 90);
}

TEST_CASE(
    "recalculated, a set's workbook has a column of the run for each piece, and its price is of the sum of them") {
    if (!fs::exists(office)) {
        WARN("skipped: no " << office << " on this machine");
        return;
    }
    SetPlant plant;
    QuotedBook quoted(plant.folder(), plant.write_request("S-1", "200, 1000"));
    const Sheets sheets = recalculated(plant.folder(), {&quoted.book}).front();
    const std::size_t pieces = quoted.answer.pieces.size();
    REQUIRE(pieces == 3);
    for (std::size_t i = 0; i < quoted.answer.quantities.size(); ++i) {
        for (std::size_t p = 0; p < pieces; ++p) {
            const answers::Quote& quote = *quoted.answer.pieces[p].quantities[i].quote;
            check_costs(sheets.at("Cost " + std::to_string(i + 1) + " piece " + std::to_string(p + 1)), quote);
            check_run(sheets.at("Run"), quote, i * pieces + p + 3);
        }
        check_ladder(sheets.at("Quote"), *quoted.answer.quantities[i].set, i + 1);
    }
}

// By hand, from costs of 327.3699, 484.6049 and 1723.6788 EUR at 500, 1000 and 5000 boxes.
TEST_CASE("prices that the plant's rules raised follow a changed margin, least order and paper, by formulas alone") {
    if (!fs::exists(office)) {
        WARN("skipped: no " << office << " on this machine");
        return;
    }
    PlantCopy plant;
    add_rules(plant, "  round_up_to: 0.25\n  least_order: 500\n");
    PlantCopy in_coins;
    add_rules(in_coins, "  round_up_to: 0.01\n");
    QuotedBook as_it_is(plant.folder(), demo_request("R-1001")), coins(in_coins.folder(), demo_request("R-1001"));
    render::FormulaBook at_half = as_it_is.book, least = as_it_is.book, web = as_it_is.book;
    change_input(at_half, "margin", 0.5);
    change_input(least, "pricing.least_order", 2000);
    change_input(web, "web.order_change", 50);
    const std::vector<Sheets> sheets =
        recalculated(plant.folder(), {&as_it_is.book, &at_half, &least, &web, &coins.book});
    const auto price = [&](std::size_t book, std::size_t column) {
        return number_in(sheets[book].at("Quote"), 4, column);
    };
    for (std::size_t i = 0; i < 3; ++i) {
        check_ladder(sheets[0].at("Quote"), *as_it_is.answer.quantities[i].quote, i + 1);
        check_ladder(sheets[4].at("Quote"), *coins.answer.quantities[i].quote, i + 1);
    }
    CHECK((price(0, 1) == 1000 && price(0, 2) == 591 && price(0, 3) == 420.5));
    CHECK((price(1, 1) == 1309.5 && price(1, 2) == 969.25 && price(1, 3) == 689.5));
    CHECK((price(2, 1) == 4000 && price(2, 2) == 2000 && price(2, 3) == 420.5));
    // 25 m more at an order change are 25 m more of web, and more paper to pay.
    const answers::Quote& quote = *as_it_is.answer.quantities[2].quote;
    CHECK(run_number(sheets[3].at("Run"), "web.length", "", 5) == Approx(quote.web_length_m + 25).epsilon(1e-12));
    CHECK(run_number(sheets[3].at("Run"), "balance", "", 5) == 0);
    CHECK(number_in(sheets[3].at("Cost 3"), 2, 7) > quote.lines.front().amount.to_double());
}

TEST_CASE("what the run's formulas do not make of its cells stands there as a value, and the other columns calculate") {
    QuotedBook quoted(demo_plant(), demo_request("R-1001"));
    // As of a model that strips a kilogram more off the rolls.
    answers::MassBalance& mass = quoted.answer.quantities[2].quote->mass;
    for (auto& loss : mass.losses)
        if (loss.cause == "roll-ends") loss.by_step_kg[0] = loss.total_kg += 1;
    mass.issued_kg += 1;
    mass.loss_kg += 1;
    const auto book = workbooks::quote_workbook(quoted.place.plant, quoted.place.engine, quoted.answer, {});
    CHECK(values_of_run(book) == std::vector<std::string>{"mass.issued 5", "roll-ends 5"});
}

TEST_CASE("a workbook of a way that was asked for has the run of that way, as formulas") {
    const QuotedBook quoted(demo_plant(), demo_request("R-1001"));
    answers::QuoteOptions asked;
    asked.way.roll_width_mm = 2250;
    const auto answer = quoting::quote(quoted.place.plant, quoted.place.engine, quoted.request, asked);
    REQUIRE(quoted.answer.quantities[0].quote->roll_width_mm == 2450);
    REQUIRE(answer.quantities[0].is_makeable());
    CHECK(values_of_run(workbooks::quote_workbook(quoted.place.plant, quoted.place.engine, answer, asked)).empty());
}

TEST_CASE("a workbook of an order that pays a share of its web has the run of that share, as formulas") {
    PlantCopy plant;
    const std::string request =
        plant.write("R-1.yaml", bytes_of(demo_request("R-1001")) + "trim: {share: 0.03, changes: 0.5}\n");
    const QuotedBook quoted(plant.folder(), request);
    CHECK(quoted.answer.quantities[0].quote->web_length_m <
          QuotedBook(plant.folder(), demo_request("R-1001")).answer.quantities[0].quote->web_length_m);
    CHECK(values_of_run(quoted.book).empty());
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
