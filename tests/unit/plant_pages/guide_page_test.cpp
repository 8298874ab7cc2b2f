// The guides as pages: their text in full, and no markup but ours.
#include "host/plant_pages/guide_page.hpp"

#include <catch2/catch.hpp>

#include "host/plant_pages/markdown.hpp"
#include "tests/unit/plant_pages/page_holds.hpp"

using namespace flutebook;
using pages::markdown_html;

TEST_CASE("a text's headings, lists, emphasis and code become those of the page") {
    const std::string html = markdown_html("# A *b*\n\nsome `x < y`\nmore\n\n- one\n- **two**\n\n1. first\n").text();
    CHECK(html ==
          "<h1>A <em>b</em></h1>\n<p>some <code>x &lt; y</code>\nmore</p>\n"
          "<ul>\n<li>one</li>\n<li><strong>two</strong></li>\n</ul>\n<ol>\n<li>first</li>\n</ol>\n");
}

TEST_CASE("code is shown to the sign, can be reached by the keyboard, and names the file that it is to be kept as") {
    CHECK(markdown_html("```yaml a.yaml\nk: \"<v>\"\n\n  - x\n```\n").text() ==
          "<p class=\"small quiet\">File <code>a.yaml</code></p>\n"
          "<pre tabindex=\"0\">k: &quot;&lt;v&gt;&quot;\n\n  - x\n</pre>\n");
    CHECK(markdown_html("```sh\nls\n```\n").text() == "<pre tabindex=\"0\">ls\n</pre>\n");
}

TEST_CASE("markup that stands in a text is shown and not taken") {
    const std::string html =
        markdown_html("<script>alert(1)</script>\n\nhere <b onclick=\"x()\">bold</b>\n\n![i](javascript:x)\n").text();
    for (const char* raw : {"<script", "<b ", "<img", "href", "src"}) CHECK_FALSE(fixture::page_holds(html, raw));
    CHECK(fixture::page_holds(html, "&lt;script&gt;alert(1)&lt;/script&gt;"));
    CHECK(fixture::page_holds(html, "&lt;b onclick=&quot;x()&quot;&gt;bold"));
}

TEST_CASE("a link into the repository becomes its words and the file's name") {
    CHECK(markdown_html("[The page](../../sdk/README.md) says\n").text() ==
          "<p>The page (<code>sdk/README.md</code>) says</p>\n");
}

TEST_CASE("each guide has a title, says what it is for, and leaves no mark of its language on the page") {
    REQUIRE(plant_answers::guides().size() == 5);
    for (const plant_answers::Guide& guide : plant_answers::guides()) {
        INFO(guide.name);
        CHECK(guide.title != guide.name);
        CHECK(guide.about.size() > 30);
        const std::string page = pages::guide_page({}, guide);
        CHECK(fixture::page_holds(page, "<h1>" + guide.title + "</h1>"));
        for (const char* mark : {"```", "\n## ", "|---", "**", "]("}) CHECK_FALSE(fixture::page_holds(page, mark));
    }
}

TEST_CASE("the list of guides leads to each") {
    const std::string page = pages::guide_list_page({}, plant_answers::guides());
    for (const char* name : {"accountant", "controller", "keeper", "plugin-maker", "styles"})
        CHECK(fixture::page_holds(page, "href=\"/guide/" + std::string(name) + "\""));
    CHECK(plant_answers::find_guide("../keeper") == nullptr);
}
