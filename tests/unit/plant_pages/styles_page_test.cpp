// The styles of a plant as pages: found by their words, one picture at a time.
#include "host/plant_pages/styles_page.hpp"

#include <catch2/catch.hpp>

#include "host/services/styles/show_style.hpp"
#include "tests/unit/plant_pages/page_holds.hpp"
#include "tests/unit/services/demo_styles.hpp"

using namespace flutebook;

namespace {

const char* const own_style =
    "styles:\n"
    "  pad-of-ours:\n"
    "    title: Pad <of> ours\n"
    "    note: our own construction\n"
    "    made_by: slitter\n"
    "    along: [L]\n"
    "    across: [B]\n"
    "    map: [base]\n";

const plant::Plant& own_plant() {
    static const plant::Plant plant = fixture::demo_plant_with(own_style);
    return plant;
}

std::vector<std::string> codes_for(const std::string& wanted) {
    std::vector<std::string> result;
    for (const auto& style : services::found_styles(own_plant(), wanted).styles) result.push_back(style.code);
    return result;
}

std::size_t count_of(const std::string& text, const std::string& part) {
    std::size_t count = 0;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++count;
    return count;
}

pages::FoundStyles found(const std::string& wanted, const std::string& chosen) {
    return {own_plant(), wanted, services::found_styles(own_plant(), wanted), chosen,
            services::show_style_at_usual_size(own_plant(), chosen)};
}

}  // namespace

TEST_CASE("styles are found by every word of their code and title, in letters of either case") {
    CHECK(codes_for("0201") == std::vector<std::string>{"0201"});
    CHECK(codes_for("OURS pad") == std::vector<std::string>{"pad-of-ours"});
    CHECK(codes_for("tray corners stitched").size() == 1);
    CHECK(codes_for("no such words").empty());
    CHECK(codes_for("").size() == services::list_styles(own_plant()).styles.size());
}

TEST_CASE("every style with a drawing of its own is drawn at a usual size") {
    for (const box_styles::Style& style : own_plant().styles) {
        INFO(style.code);
        CHECK(services::show_style_at_usual_size(own_plant(), style.code).has_value() == !style.is_outline);
    }
}

TEST_CASE("the list has one picture, that of the chosen style") {
    const std::string page = pages::styles_page({}, found("slotted", "0202"));
    CHECK(count_of(page, "<figcaption><b>Blank, flat") == 1);
    CHECK(count_of(page, "aria-current=\"true\"") == 1);
    CHECK(fixture::page_holds(page,
                              "href=\"/styles?for=slotted&amp;style=0202#picture\" aria-current=\"true\">0202</a>"));
    CHECK(fixture::page_holds(page, "href=\"/styles/0202\""));
}

TEST_CASE("words that no style has are answered by a sentence and no picture") {
    const std::string page = pages::styles_page({}, {own_plant(), "<none>", {}, "", std::nullopt});
    CHECK(fixture::page_holds(page, "No style has these words"));
    CHECK(fixture::page_holds(page, "value=\"&lt;none&gt;\""));
    CHECK_FALSE(fixture::page_holds(page, "<figure"));
}

TEST_CASE("a style of the plant leads to the lines that draw it, one of the library does not") {
    const auto page_of = [](const std::string& code) {
        const box_styles::Style& style = services::style_of(own_plant(), code);
        return pages::style_page(
            {}, {own_plant(), style, {}, services::show_style_at_usual_size(own_plant(), code), {}, std::nullopt});
    };
    CHECK(fixture::page_holds(page_of("pad-of-ours"), "href=\"/plant/styles.yaml#L2\">styles.yaml:2</a>"));
    CHECK(fixture::page_holds(page_of("pad-of-ours"), "Pad &lt;of&gt; ours"));
    CHECK(fixture::page_holds(page_of("0201"), "of the program"));
    CHECK_FALSE(fixture::page_holds(page_of("0201"), "href=\"/plant/"));
}

TEST_CASE("what is wrong with a size stands beside the form, which keeps what was typed") {
    const box_styles::Style& style = services::style_of(own_plant(), "0201");
    const std::string page = pages::style_page(
        {}, {own_plant(), style, {{"inside", "400x\"300"}, {"board", "B-140"}}, std::nullopt, {"inside: <wrong>"}, {}});
    CHECK(fixture::page_holds(page, "<p>inside: &lt;wrong&gt;</p>"));
    CHECK(fixture::page_holds(page, "value=\"400x&quot;300\""));
    CHECK(fixture::page_holds(page, "<option value=\"B-140\" selected>"));
    CHECK_FALSE(fixture::page_holds(page, "<figure"));
}
