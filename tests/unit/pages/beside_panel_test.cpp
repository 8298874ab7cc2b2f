// What is asked beside an enquiry: kept by its forms and links, and nothing that is typed becomes markup.
#include "host/pages/beside_panel.hpp"

#include <catch2/catch.hpp>

#include "tests/unit/pages/demo_desk.hpp"
#include "tests/unit/pages/page_text.hpp"

using namespace flutebook;
using fixture::desk_page;
using fixture::everyday_line;
using fixture::holds;

TEST_CASE("what is asked beside an enquiry is of the view, and no word of the enquiry") {
    CHECK(pages::asked_line(
              {{"style", "0201"}, {"with", "papers.*.price=+5%"}, {"boards", "B-140"}, {"rank", "500"}}) == "0201");
}

TEST_CASE("fields that are empty ask nothing beside an enquiry") {
    const pages::FormFields asked = {{"line", "0201"}, {"with", ""}, {"margins", "15"}, {"with", "a=1"}, {"roll", ""}};
    CHECK(pages::beside_fields(asked) == pages::FormFields{{"margins", "15"}, {"with", "a=1"}});
    CHECK(pages::without_way({{"roll", "2050"}, {"with", "a=1"}, {"ups", "2"}, {"corrugator", "C1"}}) ==
          pages::FormFields{{"with", "a=1"}});
}

TEST_CASE("the forms of the enquiry carry what is asked beside it, but for a rank") {
    const std::string form = desk_page({{"line", everyday_line}, {"with", "papers.*.price=+5%"}, {"rank", "500"}});
    const std::string fields =
        form.substr(form.find("id=\"fields\""), form.find("id=\"what-if\"") - form.find("id=\"fields\""));
    CHECK(holds(fields, "class=\"carried\" name=\"with\" value=\"papers.*.price=+5%\""));
    CHECK_FALSE(holds(fields, "name=\"rank\""));
}

TEST_CASE("the links of an answer keep what is asked beside it") {
    const std::string page = desk_page({{"line", everyday_line}, {"with", "papers.*.price=+5%"}});
    CHECK(holds(fixture::part(page, "ladder"), "&amp;with=papers.*.price%3D%2B5%25&amp;quantity=500"));
    CHECK(holds(fixture::part(page, "cost"), "&amp;with=papers.*.price%3D%2B5%25&amp;quantity=500&amp;explain="));
}

TEST_CASE("the form of what is asked beside an enquiry says what was asked, with room for one number more") {
    const std::string page =
        desk_page({{"line", everyday_line}, {"with", "a.b=1"}, {"with", "c.d=2"}, {"boards", "C-125,B-140"}});
    const std::string form = page.substr(page.find("id=\"what-if\""));
    CHECK(holds(form, "name=\"with\" value=\"a.b=1\""));
    CHECK(holds(form, "name=\"with\" value=\"c.d=2\""));
    CHECK(holds(form, "name=\"with\" value=\"\""));
    CHECK(holds(form, "value=\"C-125\" checked"));
    CHECK(holds(form, "value=\"B-140\" checked"));
    CHECK_FALSE(holds(form, "value=\"B-110\" checked"));
}

TEST_CASE("what is typed beside an enquiry becomes no markup") {
    for (const char* field : {"with", "boards", "margins", "prices", "ect", "bct", "corrugator", "roll", "ups"}) {
        CAPTURE(field);
        CHECK_FALSE(
            holds(desk_page({{"line", everyday_line}, {field, "\"><script>alert(1)</script>"}}), "<script>alert"));
    }
}

TEST_CASE("a way that is asked for is not offered to be saved, and leads back to any way") {
    const std::string page = desk_page({{"line", everyday_line}, {"roll", "2050"}, {"with", "a.b=1"}});
    CHECK_FALSE(holds(page, "id=\"save\" method"));
    const std::string beside = fixture::part(page, "beside");
    CHECK(holds(beside, "roll 2050 mm"));
    const std::string link = beside.substr(beside.find("id=\"any-way\""), 300);
    CHECK(holds(link, "with=a.b"));
    CHECK_FALSE(holds(link.substr(0, link.find("\">")), "roll"));
}

TEST_CASE("without anything asked beside it, the enquiry's answer has no such part to be seen") {
    CHECK(holds(desk_page({{"line", everyday_line}}), "<section id=\"beside\" hidden></section>"));
}
