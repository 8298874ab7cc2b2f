// Messages on pages: places lead to the lines that they name, and options are called as the fields are.
#include "host/pages/place_links.hpp"

#include <catch2/catch.hpp>

#include "host/pages/field_words.hpp"
#include "host/pages/refusal_page.hpp"
#include "host/pages/report_page.hpp"
#include "host/pages/saved_quote_page.hpp"
#include "tests/unit/pages/demo_desk.hpp"

using namespace flutebook;
using fixture::holds;

namespace {

constexpr const char* linked = "<a class=\"place\" href=\"/plant/plant.yaml#L3\">plant.yaml:3:7</a>";

pages::Frame at_open_plant() {
    pages::Frame frame = fixture::accountant();
    frame.open_plant = &fixture::demo_plant();
    return frame;
}

std::string saved_page(const plant::Plant& kept) {
    fixture::AnsweredLine line = fixture::answered(fixture::everyday_line);
    line.answer->warnings = {{"plant.yaml:3:7", "is doubtful"}};
    const answers::ListedQuote listed = fixture::listed(*line.answer);
    pages::SavedQuotePage quote{kept, *line.answer, listed,
                                pages::answer_view(pages::Address("/quotes").at(listed.number), {})};
    quote.view.open_plant = &fixture::demo_plant();
    return pages::saved_quote_page(at_open_plant(), quote);
}

}  // namespace

TEST_CASE("a place in a refusal leads to the line that it names, by the file's name alone") {
    const std::string message = fixture::demo_plant().folder + "/plant.yaml:3:7: is refused";
    CHECK(holds(pages::refusal_page(at_open_plant(), {422, {message}}), std::string("<li>") + linked + ": is refused"));
}

TEST_CASE("a place in a report of any page leads to the line that it names") {
    render::Report report{"any", "any", std::nullopt, {{"any", {render::Note{"see plant.yaml:3:7"}}}}};
    CHECK(holds(pages::report_page(at_open_plant(), "any", {report}), std::string("see ") + linked));
}

TEST_CASE("a place of a saved quote leads to its line where it reads as it did then, else nowhere") {
    CHECK(holds(saved_page(fixture::demo_plant()), linked));
    plant::Plant other = fixture::demo_plant();
    other.files["plant.yaml"] = "another: 1\nanother: 2\nanother: 3\n";
    CHECK(holds(saved_page(other), "plant.yaml:3:7"));
    CHECK_FALSE(holds(saved_page(other), "href=\"/plant/plant.yaml#L3\""));
}

TEST_CASE("whoever may not see the plant's files has no links to them") {
    const std::string page = pages::refusal_page(fixture::accountant(), {422, {"plant.yaml:3:7: is refused"}});
    CHECK(holds(page, "<li>plant.yaml:3:7: is refused"));
}

TEST_CASE("a message on a page names the field of the form where the command line names its option") {
    CHECK(pages::in_field_words("--board B-9: unknown board; leave --price out (--margin 15)") ==
          "Boards side by side B-9: unknown board; leave Prices asked out (Margins 15)");
    CHECK(pages::in_field_words("name who approves of it, --approve NAME with one of A. Example") ==
          "name who approves of it, in the field Approved by: A. Example");
}

TEST_CASE("what somebody typed stays in a message as it was typed") {
    CHECK(pages::in_field_words("found `--board`, --boards and --price-list") ==
          "found `--board`, --boards and --price-list");
}
