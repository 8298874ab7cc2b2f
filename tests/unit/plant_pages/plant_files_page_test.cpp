// The files of a plant as pages, and places in them as links.
#include "host/plant_pages/plant_files_page.hpp"

#include <catch2/catch.hpp>

#include "host/pages/place_links.hpp"
#include "host/render/html_blocks.hpp"
#include "tests/unit/plant_pages/page_holds.hpp"
#include "tests/unit/services/demo_styles.hpp"

using namespace flutebook;

namespace {

plant::Plant two_files() {
    plant::Plant plant;
    plant.folder = "some/plant";
    plant.files = {{"a.yaml", "one: <1>\r\n\n  two: 2"}, {"b.yaml", ""}};
    return plant;
}

std::string shown(const plant::Plant& plant, const std::string& text) {
    const pages::PlaceLinks places(&plant);
    render::HtmlBlocks blocks("x-", &places);
    blocks.write(render::Note{text});
    return blocks.taken();
}

}  // namespace

TEST_CASE("a file is shown line by line, each with its number as its id, spaces and signs as they are") {
    const std::string page = pages::plant_file_page({}, *plant_answers::plant_file(two_files(), "a.yaml"));
    CHECK(fixture::page_holds(page,
                              "<tr id=\"L1\"><th scope=\"row\">1</th><td><code>one: &lt;1&gt;</code></td></tr>\n"
                              "<tr id=\"L2\"><th scope=\"row\">2</th><td><code></code></td></tr>\n"
                              "<tr id=\"L3\"><th scope=\"row\">3</th><td><code>  two: 2</code></td></tr>\n"));
    CHECK_FALSE(fixture::page_holds(page, "id=\"L4\""));
    CHECK_FALSE(fixture::page_holds(page, "id=\"changed\""));
}

TEST_CASE("a file that is another now is shown as it was read, and says so") {
    plant_answers::PlantFile file = *plant_answers::plant_file(two_files(), "a.yaml");
    const plant::Plant plant = two_files();
    file.changed = "changed at 10:41 UTC";
    CHECK(fixture::page_holds(pages::plant_file_page({}, file), "The file changed at 10:41 UTC since"));
    CHECK(fixture::page_holds(pages::plant_files_page({}, {plant, {file}, {}}), ">changed at 10:41 UTC</td>"));
}

TEST_CASE("only a name that the plant was read from is a file") {
    for (const char* name : {"", "..", "a", "A.yaml", "./a.yaml", "some/plant/a.yaml", "/etc/passwd", "c.yaml"})
        CHECK_FALSE(plant_answers::plant_file(two_files(), name));
}

TEST_CASE("a place in a text leads to its line, also where the file is named with the plant's folder") {
    const plant::Plant plant = two_files();
    CHECK(shown(plant, "from a.yaml:3:7, and a.yaml:1") ==
          "<p>from <a class=\"place\" href=\"/plant/a.yaml#L3\">a.yaml:3:7</a>, and "
          "<a class=\"place\" href=\"/plant/a.yaml#L1\">a.yaml:1</a></p>\n");
    CHECK(fixture::page_holds(shown(plant, "(some/plant/a.yaml:2:1): x"),
                              "href=\"/plant/a.yaml#L2\">a.yaml:2:1</a>): x"));
}

TEST_CASE("what is no line of a file of the plant stays a text") {
    const plant::Plant plant = two_files();
    for (const char* text : {"a.yaml:4:1", "a.yaml:0", "b.yaml:1", "c.yaml:1:1", "elsewhere/a.yaml:1",
                             "a.yaml:", "a.yaml", "a.yaml:99999999999999999999", ".yaml:1", "a.yaml:x a.yaml: 1"})
        CHECK(shown(plant, text) == "<p>" + std::string(text) + "</p>\n");
}

TEST_CASE("a line that exists is named the same by a link and by the page of its file") {
    const plant::Plant plant = fixture::demo_plant_with("");
    for (const plant_answers::PlantFile& file : plant_answers::plant_files(plant)) {
        const int last = static_cast<int>(file.lines.size());
        const std::string page = pages::plant_file_page({}, file);
        CHECK(fixture::page_holds(page, "id=\"L" + std::to_string(last) + "\""));
        CHECK(pages::place_address(plant, file.name, last) == "/plant/" + file.name + "#L" + std::to_string(last));
        CHECK(pages::place_address(plant, file.name, last + 1).empty());
    }
}
