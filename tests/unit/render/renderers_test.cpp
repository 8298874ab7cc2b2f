// One small report through each renderer, with texts that would be signs of its language.
#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "host/render/html_report.hpp"
#include "host/render/text_exports.hpp"
#include "host/render/text_report.hpp"
#include "host/render/workbook_report.hpp"
#include "tests/support/child.hpp"

using namespace flutebook;
using namespace flutebook::render;
using Catch::Matchers::Contains;

namespace {

using ColumnKind = TableColumn::Kind;

Money money(double amount) {
    return Money::rounded(amount, 4).value();
}

// "hostile" stands wherever a report takes a text.
Report report_with(const std::string& hostile) {
    ReportTable table{"losses",
                      {{"cause", ColumnKind::name},
                       {"actual", ColumnKind::number, "kg"},
                       {"", ColumnKind::number, "of issued"},
                       {"cost", ColumnKind::number, "EUR"},
                       {"since", ColumnKind::text}}};
    table.add(TableRow::Kind::group, {"machine"});
    table.add({hostile, Number{1234.5678, 2}, Percentage{0.0925}, Amount{money(-12.5)},
               base::Date(std::chrono::year(2026), std::chrono::month(9), std::chrono::day(1))});
    table.add({"trim", Number{5, 2, Number::Form::fixed, "t"}}, 1);
    table.add(TableRow::Kind::total, {"total", Number{1239.5678, 2}});
    table.rows[1].notes.push_back({hostile});
    ReportSection part{hostile, {}, ReportSection::Kind::part, "aside", "one"};
    ReportSection section{"Losses", {Facts{{hostile, {hostile, "b"}}}, table, Note{hostile, Note::Kind::warning}}};
    return {"month", "2026-09", ReportHeading{hostile, "plant", {{"money in", {"EUR"}}}}, {part, section}};
}

std::size_t count_of(const std::string& text, const std::string& part) {
    std::size_t count = 0;
    for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + part.size())) ++count;
    return count;
}

// A folder of its own, gone with the test.
class ScratchFolder {
public:
    ScratchFolder() {
        std::string name = (std::filesystem::temp_directory_path() / "flutebook-workbook-XXXXXX").string();
        REQUIRE(::mkdtemp(name.data()) != nullptr);
        path_ = name;
    }
    ~ScratchFolder() { std::filesystem::remove_all(path_); }
    ScratchFolder(const ScratchFolder&) = delete;
    ScratchFolder& operator=(const ScratchFolder&) = delete;
    [[nodiscard]] const std::string& path() const { return path_; }

private:
    std::string path_;
};

std::string bytes_of(const std::string& file) {
    std::ostringstream text;
    text << std::ifstream(file, std::ios::binary).rdbuf();
    return text.str();
}

}  // namespace

TEST_CASE("HTML takes every text as text, stands alone and has no script") {
    const std::string html = to_html({report_with("<script>alert(1)</script> & \"x\" onload=\"y")});
    CHECK(html.find("<script") == std::string::npos);
    CHECK(html.find(" onload=\"") == std::string::npos);
    CHECK(count_of(html, "&lt;script&gt;alert(1)&lt;/script&gt; &amp; &quot;x&quot; onload=&quot;y") == 8);
    CHECK_THAT(html, Contains("default-src 'none'; style-src 'unsafe-inline'"));
    for (const char* outside : {"http:", "https:", "url(", "@import", "<link", "<img", "src=\"", "<iframe"}) {
        CAPTURE(outside);
        CHECK(html.find(outside) == std::string::npos);
    }
    CHECK(count_of(html, "<section") == count_of(html, "</section>"));
    CHECK(count_of(html, "<tr") == count_of(html, "</tr>"));
    CHECK(count_of(html, "<table") == count_of(html, "</table>"));
}

TEST_CASE("HTML tells numbers from texts, and sums from items") {
    const std::string html = to_html({report_with("=1+1")});
    CHECK_THAT(html, Contains("<td class=\"num\">1 234.57</td>"));
    CHECK_THAT(html, Contains("<td class=\"num\">9.25 <span class=\"unit\">%</span></td>"));
    CHECK_THAT(html, Contains("<td class=\"num\">-12.5000</td>"));
    CHECK_THAT(html, Contains("<td class=\"text\">2026-09-01</td>"));
    CHECK_THAT(html, Contains("<tr class=\"total\"><th scope=\"row\""));
    CHECK_THAT(html, Contains("<tr class=\"group\"><th scope=\"rowgroup\""));
}

TEST_CASE("ids of two reports in one HTML file differ") {
    Report one = report_with("a");
    std::get<ReportTable>(one.sections[1].blocks[1]).rows[1].cells[1] = Cell(Number{7, 0}, "one");
    const std::string html = to_html({one, one});
    for (const char* once : {"id=\"r0-one\"", "href=\"#r0-one\"", "id=\"r1-one\"", "href=\"#r1-one\""})
        CHECK(count_of(html, once) == 1);
}

TEST_CASE("bytes that are no text do not reach an HTML file") {
    const std::string html = to_html({report_with(std::string("a\xff\x01\0b", 5))});
    CHECK(html.find('\xff') == std::string::npos);
    CHECK(html.find('\x01') == std::string::npos);
    CHECK(html.find('\0') == std::string::npos);
}

TEST_CASE("Markdown takes every text as text and keeps its tables whole") {
    const std::string page = to_markdown(report_with("<b>*x*</b> | [a](b) `c` # d"));
    CHECK_THAT(page, Contains("# \\<b\\>\\*x\\*\\</b\\> \\| \\[a\\](b) \\`c\\` \\# d\n"));
    CHECK_THAT(page, Contains("|---|---:|---:|---:|---|\n"));
    CHECK_THAT(page, Contains("| **total** | **1 239.57** |"));
    CHECK(page.find("<b>") == std::string::npos);
}

TEST_CASE("CSV has raw numbers, and no text that a spreadsheet would calculate") {
    const std::string csv = to_csv(report_with("=1+\"1\""));
    const std::string name = "\"2026-09\",\"losses\",\"'=1+\"\"1\"\"\",";
    CHECK(csv.rfind("\"month\",\"table\",\"row\",\"column\",\"value\"\r\n", 0) == 0);
    CHECK_THAT(csv, Contains(name + "\"actual kg\",1234.5678\r\n"));
    CHECK_THAT(csv, Contains(name + "\"of issued\",0.0925\r\n"));
    CHECK_THAT(csv, Contains(name + "\"cost EUR\",-12.5\r\n"));
    CHECK_THAT(csv, Contains(name + "\"since\",\"2026-09-01\"\r\n"));
    CHECK_THAT(csv, Contains("\"'=1+\"\"1\"\": trim\""));
    CHECK(csv.find("\"=") == std::string::npos);
    for (const char* formula : {"=1", "+1", "-1", "@a", "\t=1",
                                "\xEF\xBC\x9D"
                                "1"})
        CHECK_THAT(to_csv(report_with(formula)), Contains("\"'" + std::string(formula)));
}

TEST_CASE("a text page says the same and stays within 100 columns") {
    const std::string page = to_text(report_with(std::string(150, 'x')));
    CHECK_THAT(page, Contains("1 234.57") && Contains("9.25 %") && Contains("-12.5000") && Contains("2026-09-01"));
    CHECK_THAT(page, Contains("money in EUR"));
    std::istringstream lines(to_text(report_with("a cause of loss")));
    for (std::string line; std::getline(lines, line);) CHECK(line.size() <= 100);
}

TEST_CASE("inches of a cell stand as on a ruler on pages, and as raw numbers in files") {
    Report report{"trim", "", std::nullopt, {}};
    ReportTable table{"trim", {{"", ColumnKind::name}, {"was", ColumnKind::number}, {"now", ColumnKind::number}}};
    table.add(
        {"trim", Number{15.25, 6, Number::Form::significant, "in"}, Number{15.3, 6, Number::Form::significant, "in"}});
    table.add(
        {"by", Number{0.5, 2, Number::Form::fixed, "in", Sign::always}, Number{0.5, 2, Number::Form::fixed, "lb"}});
    report.sections.push_back({"Trim", {table}});
    CHECK_THAT(to_text(report),
               Contains(" 15 1/4 in") && Contains(" 15.3  in") && Contains(" +1/2 ") && Contains(" 0.50 lb"));
    CHECK_THAT(to_markdown(report), Contains("15 1/4 in"));
    CHECK_THAT(to_html({report}), Contains("15 1/4"));
    CHECK_THAT(to_csv(report), Contains(",15.25\r\n"));
}

TEST_CASE("in a workbook texts are texts and numbers are raw numbers, and nothing is a formula") {
    const ScratchFolder folder;
    REQUIRE(write_workbook(folder.path() + "/book.xlsx", report_with("=1+1"), 2026).empty());
    // A workbook is a ZIP archive of XML.
    const fixture::Ended unpacked = fixture::run({{"/bin/sh", "-c", "cmake -E tar xf book.xlsx"}, folder.path()});
    REQUIRE(unpacked.exit_code == 0);
    const std::string sheet = bytes_of(folder.path() + "/xl/worksheets/sheet1.xml");
    CHECK_THAT(bytes_of(folder.path() + "/xl/sharedStrings.xml"), Contains("<t>=1+1</t>"));
    CHECK_THAT(sheet, Contains("<v>1234.5678</v>") && Contains("<v>0.0925") && Contains("<v>-12.5</v>"));
    CHECK(sheet.find("<f>") == std::string::npos);
    CHECK_THAT(bytes_of(folder.path() + "/xl/styles.xml"), Contains("0.00%") && Contains("#,##0.0000"));
}

TEST_CASE("a workbook is the same bytes each time, and a file that cannot be written is told") {
    const ScratchFolder folder;
    const std::string first = folder.path() + "/1.xlsx", second = folder.path() + "/2.xlsx";
    CHECK(write_workbook(first, report_with("=1+1"), 2026).empty());
    CHECK(write_workbook(second, report_with("=1+1"), 2026).empty());
    CHECK(bytes_of(first) == bytes_of(second));
    CHECK(bytes_of(first).substr(0, 2) == "PK");
    CHECK_FALSE(write_workbook(folder.path() + "/none/3.xlsx", report_with("a"), 2026).empty());
}
