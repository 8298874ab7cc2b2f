// The quote desk on the demo plant.
#include "host/pages/quote_desk.hpp"

#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "host/pages/assets.hpp"
#include "host/pages/quote_list_page.hpp"
#include "host/pages/report_page.hpp"
#include "host/pages/saved_quote_page.hpp"
#include "host/plant_reports/describe_report.hpp"
#include "tests/unit/pages/demo_desk.hpp"

using namespace flutebook;
using fixture::desk_page;
using fixture::everyday_line;
using fixture::holds;

TEST_CASE("pages are written to the folder that FLUTEBOOK_KEPT_PAGES names, to be looked at") {
    const char* folder = std::getenv("FLUTEBOOK_KEPT_PAGES");
    if (folder == nullptr) return;
    const std::filesystem::path at(folder);
    std::filesystem::create_directories(at / "assets");
    for (const pages::Asset& asset : pages::assets()) std::ofstream(at / "assets" / asset.served_as) << asset.bytes;
    std::ofstream(at / "desk.html") << desk_page({{"line", everyday_line}, {"quantity", "1000"}});
    std::ofstream(at / "explained.html") << desk_page(
        {{"line", everyday_line}, {"quantity", "1000"}, {"explain", "starch"}});
    std::ofstream(at / "empty.html") << desk_page({});
    std::ofstream(at / "refused.html") << desk_page({{"line", "0201 400x300 B-999 500 18%"}});
    std::ofstream(at / "limits.html") << desk_page({{"line", "0201 2400x1900x1250 B-140 500 18%"}});
    const fixture::AnsweredLine saved = fixture::answered(everyday_line);
    const answers::ListedQuote row = fixture::listed(*saved.answer);
    std::ofstream(at / "list.html") << pages::quote_list_page(
        fixture::accountant(), {plant::Units::metric, {{row, row}, true}, {{"for", "ash"}}, {}});
    std::ofstream(at / "none.html") << pages::quote_list_page(fixture::accountant(),
                                                              {plant::Units::metric, {}, {}, {}});
    const pages::AnswerView view{pages::Address("/quotes").at(row.number), 1000, "", false};
    const pages::SavedQuotePage page{fixture::demo_plant(), *saved.answer, row, view, saved.answer->request.text};
    const fixture::AnsweredLine heavier = fixture::answered("0201 400x300x250 BC-170 500 1000 18% 2026-10-15");
    answers::ListedQuote other_row = fixture::listed(*heavier.answer);
    other_row.number = "Q000008";
    const pages::SavedQuotePage other{
        fixture::demo_plant(), *heavier.answer, other_row, {pages::Address("/quotes").at("Q000008"), 1000, "", false}};
    std::ofstream(at / "saved.html") << pages::saved_quote_page(fixture::accountant(), page);
    std::ofstream(at / "beside.html") << pages::quotes_beside_page(fixture::accountant(), page, other);
    std::ofstream(at / "models.html") << pages::report_page(
        fixture::accountant(), "Models", {plant_reports::plugin_list_report(fixture::demo_engine().graph(), {})});
    std::ofstream(at / "set.html") << desk_page({{"line", "0301 400x300x150 B-140 500 1000 18%"}});
    CHECK(std::filesystem::exists(at / "desk.html"));
}

TEST_CASE("the desk shows the price of the line, and how the line was understood") {
    const std::string page = desk_page({{"line", everyday_line}});
    CHECK(holds(page, "style 0201"));
    CHECK(holds(page, "style 0201, inside 400 x 300 x 250 mm"));
}
