// A style as data: what of styles.yaml becomes what of a style, what one takes over from another, and whose counts.
#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

#include "host/box_styles/styles_file.hpp"
#include "tests/unit/box_styles/style_bench.hpp"
#include "tests/unit/plant/plant_folder.hpp"

using namespace flutebook;
using namespace flutebook::fixture;
using namespace flutebook::fields;
using namespace flutebook::box_styles;
using namespace flutebook::plant;

namespace {

const StyleCell& cell_of(const Style& style, const std::string& name) {
    const auto& cells = style.pieces.front().cells;
    const auto found = std::find_if(cells.begin(), cells.end(), [&](const auto& cell) { return cell.name == name; });
    REQUIRE(found != cells.end());
    return *found;
}

std::string parent_of(const Style& style, const std::string& name) {
    const auto parent = cell_of(style, name).parent;
    return parent ? style.pieces.front().cells[*parent].name : "";
}

}  // namespace

TEST_CASE("a style's map becomes a tree of cells, each after the one that it hangs on") {
    const auto styles = read_styles_text(tray_text());
    REQUIRE(styles.size() == 1);
    const Style& tray = styles.front();
    CHECK(tray.code == "T-1");
    CHECK(tray.is_folded());
    CHECK(tray.uses_height);
    CHECK_FALSE(tray.uses_allowances);
    CHECK(tray.pieces.front().cells.front().name == "base");
    CHECK(parent_of(tray, "base").empty());
    CHECK(parent_of(tray, "back") == "base");
    CHECK(parent_of(tray, "lip") == "back");
    CHECK(parent_of(tray, "e2") == "base");
    CHECK(cell_of(tray, "lip").angle_deg == -90);
    CHECK(cell_of(tray, "e1").angle_deg == 90);
    CHECK(cell_of(tray, "e1").taper[1]->text == "5");
    CHECK(cell_of(tray, "base").holes.size() == 1);
    const auto& cells = tray.pieces.front().cells;
    for (std::size_t i = 0; i < cells.size(); ++i) CHECK((!cells[i].parent || *cells[i].parent < i));
}

TEST_CASE("a sum stands where its file has it") {
    const auto styles = read_styles_text(tray_text());
    CHECK(styles[0].pieces[0].across[2].place.line == 8);
    CHECK(styles[0].pieces[0].across[2].place.column == 22);
}

TEST_CASE("a cell whose name repeats is one cell as large as its places") {
    const auto styles = read_styles_text(
        "styles:\n  P:\n    title: T\n    along: [L, 20]\n    across: [B, 20]\n"
        "    map: [a a, --  --, b b]\n    fold: [b]\n");
    const StyleCell& a = cell_of(styles[0], "a");
    CHECK(a.first_column == 0);
    CHECK(a.last_column == 1);
    CHECK(parent_of(styles[0], "b") == "a");
}

TEST_CASE("a style takes over what it is like, joined name by name where names stand") {
    const auto styles = read_styles_text(tray_text() +
                                         "  T-2:\n    like: T-1\n    title: Another\n    let: {k: 2*h}\n"
                                         "    cells: {e2: {inset: 2*t}}\n");
    REQUIRE(styles.size() == 2);
    CHECK(styles[1].title == "Another");
    CHECK(styles[1].pieces[0].let.size() == 2);
    CHECK(styles[1].pieces[0].let[1].name == "k");
    CHECK(cell_of(styles[1], "e1").taper[1]->text == "5");
    CHECK(cell_of(styles[1], "e2").inset[0]->text == "2*t");
    CHECK_FALSE(cell_of(styles[1], "e2").taper[0].has_value());
    CHECK(styles[1].asks.size() == 1);
}

TEST_CASE("a style with its own map drops the copied keys of cells that it lacks") {
    const auto styles =
        read_styles_text(tray_text() +
                         "  T-2:\n    like: T-1\n    along: [L, h]\n    across: [B]\n    map: [base | e2]\n"
                         "    fold: [e2]\n    inside: {}\n");
    REQUIRE(styles.size() == 2);
    CHECK(styles[1].pieces[0].cells.size() == 2);
    CHECK(cell_of(styles[1], "e2").taper[1]->text == "5");
}

TEST_CASE("a plant's style may be `like` the library's style of the same code") {
    const auto styles = read_styles_text("styles:\n  \"0201\":\n    like: \"0201\"\n    title: Ours\n");
    REQUIRE(styles.size() == 1);
    CHECK(styles[0].pieces[0].cells.size() == 13);
}

TEST_CASE("pieces may be like one another and have stages of their own") {
    const auto styles = read_styles_text(
        "styles:\n  S:\n    title: Set\n    made_by: [die-cutter]\n    pieces:\n"
        "      a: {along: [L], across: [B], count: 2}\n      b: {like: a, along: [L + 4*t], made_by: folder-gluer, "
        "over: a}\n");
    REQUIRE(styles[0].pieces.size() == 2);
    CHECK(styles[0].pieces[1].along[0].text == "L + 4*t");
    CHECK(styles[0].pieces[1].count->text == "2");
    CHECK(styles[0].pieces[1].over == 0U);
    CHECK(styles[0].pieces[0].made_by == std::vector<Stage>{{Converter::Kind::die_cutter}});
    CHECK(styles[0].pieces[1].made_by == std::vector<Stage>{{Converter::Kind::folder_gluer}});
}

TEST_CASE("the text of a style reads back as the same style") {
    for (const Style& style : style_library().styles) {
        INFO(style.code);
        const auto again = read_styles_text(style.text);
        REQUIRE(again.size() == 1);
        CHECK(again[0].code == style.code);
        CHECK(again[0].text == style.text);
        CHECK(again[0].pieces.size() == style.pieces.size());
    }
}

TEST_CASE("a style of the library read alone is the style that the whole library has") {
    for (const Style& whole : style_library().styles) {
        CAPTURE(whole.code);
        const Style* alone = library_style(whole.code);
        REQUIRE(alone != nullptr);
        CHECK(alone->text == whole.text);
        CHECK(alone->title == whole.title);
        CHECK(alone->place.file == whole.place.file);
        CHECK(alone->place.line == whole.place.line);
        CHECK(alone->uses_allowances == whole.uses_allowances);
        CHECK(alone->uses_height == whole.uses_height);
        REQUIRE(alone->pieces.size() == whole.pieces.size());
        for (std::size_t i = 0; i < whole.pieces.size(); ++i)
            CHECK(alone->pieces[i].place.line == whole.pieces[i].place.line);
    }
    CHECK(library_style("0999") == nullptr);
    CHECK(library_style("") == nullptr);
}

TEST_CASE("every plant has the library and the outline, and its own entry counts instead") {
    const PlantFolder folder;
    const auto plain = folder.read();
    CHECK(plain.find_style("0201") != nullptr);
    CHECK(plain.find_style("outline")->is_outline);
    folder.write(
        "styles.yaml",
        "styles:\n  \"0201\": {like: \"0201\", title: Ours}\n  X-1: {title: Strip, along: [L], across: [B]}\n");
    const auto changed = folder.read();
    CHECK(changed.find_style("0201")->title == "Ours");
    CHECK(changed.find_style("X-1") != nullptr);
    CHECK(changed.styles.size() == plain.styles.size() + 1);
    CHECK(changed.files.contains("styles.yaml"));
    CHECK(read_plant(folder.path(), changed.files).find_style("X-1") != nullptr);
}

TEST_CASE("a style that was kept with a quote counts before the plant's of today") {
    const PlantFolder folder;
    auto files = folder.read().files;
    files[kept_style_file] = "styles: {\"0201\": {like: \"0201\", title: Kept}}";
    CHECK(read_plant(folder.path(), files).find_style("0201")->title == "Kept");
}

TEST_CASE("each code of the library stands for one style, whichever file it is in") {
    std::set<std::string> codes, files;
    for (const Style& style : style_library().styles) {
        INFO(style.code);
        CHECK(codes.insert(style.code).second);
        files.insert(style.place.file);
    }
    CHECK(files == std::set<std::string>{"library/styles.yaml", "library/styles_04.yaml"});
}
