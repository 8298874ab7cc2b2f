// What stands around every page.
#include "host/pages/frame.hpp"

#include <catch2/catch.hpp>

#include "host/pages/assets.hpp"
#include "tests/unit/pages/demo_desk.hpp"

using namespace flutebook::pages;
using flutebook::fixture::holds;

namespace {

Frame frame_of(Role role) {
    Frame frame;
    frame.plant = "Plant & <b>";
    frame.person = "M. <i>";
    frame.role = role;
    frame.token = "\"t";
    return frame;
}

}  // namespace

TEST_CASE("a page escapes the plant, the person, its title, its notices and its token") {
    Frame frame = frame_of(Role::reader);
    frame.notices = {{"<u>machines.yaml</u> changed", Notice::Kind::warning}};
    const std::string page = document(frame, "<title>", token_field(frame));
    for (const char* raw : {"<b>\"", "<i>", "<u>", "<title><", "\"\"t"}) CHECK_FALSE(holds(page, raw));
    for (const char* escaped : {"Plant &amp; &lt;b&gt;", "M. &lt;i&gt;", "&lt;u&gt;machines",
                                "&lt;title&gt; - Flutebook", "value=\"&quot;t\""})
        CHECK(holds(page, escaped));
}

TEST_CASE("a keeper may reload a plant whose files have changed, and every page says that they have") {
    Frame frame = frame_of(Role::controller);
    frame.notices = {{"papers.yaml changed", Notice::Kind::plant}};
    const std::string told = document(frame, "x", Html());
    CHECK(holds(told, "<p class=\"warning\">papers.yaml changed</p>"));
    CHECK_FALSE(holds(told, "/reload"));
    frame.role = Role::keeper;
    CHECK(holds(document(frame, "x", Html()), "<form method=\"post\" action=\"/reload\"><input type=\"hidden\""));
    frame.notices.front().kind = Notice::Kind::warning;
    CHECK_FALSE(holds(document(frame, "x", Html()), "/reload"));
}

TEST_CASE("a page has no links for a person who has not signed in") {
    CHECK_FALSE(holds(document(frame_of(Role::nobody), "x", Html()), "<nav"));
}

TEST_CASE("a role is led to its own pages and to those of the roles before it") {
    const std::string reader = document(frame_of(Role::reader), "x", Html());
    CHECK(holds(reader, "href=\"/quotes\""));
    CHECK_FALSE(holds(reader, "href=\"/users\""));
    CHECK(holds(document(frame_of(Role::keeper), "x", Html()), "href=\"/users\""));
}

TEST_CASE("the current place is named to those who do not see it") {
    Frame frame = frame_of(Role::reader);
    frame.place = Place::months;
    CHECK(holds(document(frame, "x", Html()), "<a href=\"/months\" aria-current=\"page\">"));
}

TEST_CASE("assets have names that change with their bytes") {
    const Asset& css = asset("flutebook.css");
    CHECK(css.content_type == "text/css; charset=utf-8");
    CHECK(css.served_as.size() == std::string("flutebook-.css").size() + 12);
    CHECK(holds(document(frame_of(Role::reader), "x", Html()), "href=\"/assets/" + css.served_as + "\""));
}

TEST_CASE("the style sheet is whole, with what drawings need before it") {
    const std::string& css = asset("flutebook.css").bytes;
    CHECK(holds(css, "--kraft:"));
    CHECK(holds(css, ".panel {"));
    CHECK(css.find("--kraft:") < css.find("--ground:"));
}
