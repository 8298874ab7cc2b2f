// A YAML file as a tree: what is read, where it stood, and what is refused of all that YAML can do.
#include <fmt/format.h>

#include <catch2/catch.hpp>

#include "host/base/yaml/document.hpp"
#include "host/base/yaml/file.hpp"
#include "tests/unit/base/complaint_lines.hpp"
#include "tests/unit/plant/plant_folder.hpp"

using namespace flutebook;
using namespace flutebook::base;
using fixture::Lines;

namespace {

struct Parsed {
    std::optional<Node> root;
    Lines lines;
};

Parsed parse(const std::string& text) {
    Diagnostics complaints;
    auto root = parse_document(text, "f", complaints);
    return {std::move(root), fixture::lines_of(complaints)};
}

Lines complaints_of(const std::string& text) {
    return parse(text).lines;
}

std::string repeated(const std::string& piece, int times) {
    std::string result;
    for (int i = 0; i < times; ++i) result += piece;
    return result;
}

}  // namespace

TEST_CASE("maps, lists and texts are read in their order, with the place of keys and values") {
    const auto [root, lines] = parse("a: one\nb: [x, \"y\"]\nc:\n  d: {e: 1}\n");
    REQUIRE(lines.empty());
    REQUIRE(root->kind == Node::Kind::map);
    REQUIRE(root->entries.size() == 3);
    REQUIRE(root->entries[1].key == "b");
    REQUIRE(root->entries[1].key_place.line == 2);
    REQUIRE(root->entries[1].key_place.column == 1);
    const auto* list = root->find("b");
    REQUIRE(list->kind == Node::Kind::list);
    REQUIRE(list->place.column == 4);
    REQUIRE(list->items[1].text == "y");
    REQUIRE(list->items[1].quoted);
    REQUIRE_FALSE(list->items[0].quoted);
    REQUIRE(root->find("c")->find("d")->find("e")->place.line == 4);
    REQUIRE(root->find("c")->find("d")->find("e")->place.column == 10);
    REQUIRE(root->find("nothing") == nullptr);
    REQUIRE(place_text(places_of(*root), "c.d.e", {}) == "f:4:10");
}

TEST_CASE("columns count bytes") {
    const auto [root, lines] = parse("kränze: {größe: klein}\n");
    REQUIRE(root->find("kränze")->place.column == 10);
    REQUIRE(root->find("kränze")->entries[0].value.place.column == 20);
}

TEST_CASE("a value that was left empty stands at its key") {
    const auto [root, lines] = parse("a:\n\n\nb: ~\n");
    REQUIRE(root->find("a")->kind == Node::Kind::empty);
    REQUIRE(root->find("a")->place.line == 1);
    REQUIRE(root->find("b")->kind == Node::Kind::empty);
    REQUIRE(root->find("b")->place.line == 4);
    REQUIRE(root->find("b")->place.column == 1);
}

TEST_CASE("a byte order mark and carriage returns change neither texts nor places") {
    const auto [root, lines] = parse(
        "\xEF\xBB\xBF"
        "a: one\r\nb:\r\n  c: two\r\n");
    REQUIRE(lines.empty());
    REQUIRE(root->entries[0].key == "a");
    REQUIRE(root->entries[0].key_place.column == 1);
    REQUIRE(root->find("a")->text == "one");
    REQUIRE(root->find("b")->find("c")->text == "two");
    REQUIRE(root->find("b")->find("c")->place.line == 3);
    REQUIRE(root->find("b")->find("c")->place.column == 6);
}

TEST_CASE("an empty file is an empty node") {
    REQUIRE(parse("").root->kind == Node::Kind::empty);
    REQUIRE(parse("# nothing yet\n").root->kind == Node::Kind::empty);
}

TEST_CASE("a syntax error is its file's only one") {
    REQUIRE(complaints_of("a: *b\nc: 1\nc: [2\n") ==
            Lines{"f:1:4: not readable as YAML: the referenced anchor is not defined; mend it here or just before"});
    REQUIRE(complaints_of("a: 1\na: 2\nb: c: d\n") ==
            Lines{"f:3:5: not readable as YAML: illegal map value; mend it here or just before"});
    REQUIRE_FALSE(parse("b: c: d\n").root.has_value());
}

TEST_CASE("a duplicate key is refused with its path, and the first one stands") {
    const auto [root, lines] = parse("a:\n  b: 1\n  c: 2\n  b: 3\n");
    REQUIRE(lines == Lines{"f:4:3: a.b: duplicate key, expected each key once"});
    REQUIRE(root->find("a")->find("b")->text == "1");
    REQUIRE(root->find("a")->entries.size() == 2);
}

TEST_CASE("an alias is refused, and so is the anchor that it names") {
    REQUIRE(complaints_of("a: &x 1\nb: [2, *x]\n") == Lines{"f:1:4: a: an anchor, expected the value itself",
                                                            "f:2:8: b[2]: an alias, expected the value itself"});
}

TEST_CASE("an alias bomb is refused without going off") {
    std::string bomb = "a0: &a0 [x, x]\n";
    for (int i = 1; i < 40; ++i) bomb += fmt::format("a{0}: &a{0} [*a{1}, *a{1}, *a{1}]\n", i, i - 1);
    const auto lines = complaints_of(bomb);
    REQUIRE(lines.size() > 100);
    REQUIRE(lines[0] == "f:1:5: a0: an anchor, expected the value itself");
}

TEST_CASE("an alias to what holds it is refused") {
    REQUIRE(complaints_of("a: &a [*a]\n") == Lines{"f:1:4: a: an anchor, expected the value itself",
                                                   "f:1:8: a[1]: an alias, expected the value itself"});
}

TEST_CASE("tags are refused wherever they stand") {
    REQUIRE(complaints_of("a: !!str 5\n!k b: ! 6\nc: !!map {d: 1}\n") ==
            Lines{"f:1:4: a: a tag, expected the value itself", "f:2:1: a tag, expected the value itself",
                  "f:2:7: b: a tag, expected the value itself", "f:3:4: c: a tag, expected the value itself"});
}

TEST_CASE("an anchor on the key after an empty value is reported once") {
    REQUIRE(complaints_of("a:\n&x b: 1\n").size() == 1);
}

TEST_CASE("a key is a plain text") {
    REQUIRE(complaints_of("? [a, b]\n: 1\nc: 2\n") ==
            Lines{"f:1:3: not a name, expected a plain text as the key of a map"});
    REQUIRE(complaints_of("a: {~: 1}\n") == Lines{"f:1:5: a: not a name, expected a plain text as the key of a map"});
}

TEST_CASE("what a refused key holds is not looked at") {
    REQUIRE(complaints_of("? {a: {b: 1}}\n: {c: [d]}\n").size() == 1);
}

TEST_CASE("a second document is refused") {
    REQUIRE(complaints_of("a: 1\n---\nb: 2\n") ==
            Lines{"f:2:1: a second document starts here, expected one document a file"});
    REQUIRE(complaints_of("---\na: 1\n...\n").empty());
}

TEST_CASE("sixteen levels of nesting are read, the seventeenth is refused") {
    REQUIRE(complaints_of(repeated("[", 16) + repeated("]", 16)).empty());
    REQUIRE(complaints_of(repeated("[", 17) + repeated("]", 17)) ==
            Lines{"f:1:17: nested too deep, expected at most 16 levels"});
}

TEST_CASE("a hundred thousand open brackets are refused at the seventeenth") {
    REQUIRE(complaints_of(repeated("[", 100000)).size() == 1);
    REQUIRE(complaints_of(repeated("{", 100000)).size() == 1);
    REQUIRE(complaints_of(repeated("- ", 100000)) == Lines{"f:1:33: nested too deep, expected at most 16 levels"});
    REQUIRE(complaints_of(repeated("? ", 100000)) == Lines{"f:1:33: nested too deep, expected at most 16 levels"});
}

TEST_CASE("a tab that indents is refused, one in a comment or an empty line is not") {
    REQUIRE(complaints_of("a:\n\tb: 1\n") == Lines{"f:2:1: a tab indents this line, expected spaces"});
    REQUIRE(complaints_of("a:\n  \tb: 1\n") == Lines{"f:2:3: a tab indents this line, expected spaces"});
    REQUIRE(complaints_of("a: 1\t# here\n\t\n\t# there\nb: 2\n").empty());
}

TEST_CASE("a NUL or another control character is refused at its byte") {
    REQUIRE(complaints_of(std::string("a: 1\nb: \0c\n", 11)) == Lines{"f:2:4: a NUL byte, expected UTF-8 text"});
    REQUIRE(complaints_of("a: \x1b[2J\n") == Lines{"f:1:4: a control character, expected UTF-8 text"});
    REQUIRE(complaints_of("a: \xC2\x9B"
                          "2J\n") == Lines{"f:1:4: a control character, expected UTF-8 text"});
}

TEST_CASE("bytes that are not UTF-8 are refused") {
    for (const std::string bad :
         {"\xFF", "\xC0\xAF", "\xE0\x80\xAF", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\xE2\x82", "\x80"}) {
        CAPTURE(bad.size());
        REQUIRE(complaints_of("a: b" + bad) == Lines{"f:1:5: bytes that are not UTF-8, expected UTF-8 text"});
    }
    REQUIRE(complaints_of("a: \xE2\x82\xAC \xF0\x9F\x93\xA6\n").empty());
}

TEST_CASE("a control character that a quoted text spells out is refused") {
    const Lines refused{"f:1:4: a: a line break or control character, expected one plain line"};
    REQUIRE(complaints_of("a: \"x\\0y\"\n") == refused);
    REQUIRE(complaints_of("a: \"x\\x1by\"\n") == refused);
    REQUIRE(complaints_of("a: \"x\\x9by\"\n") == refused);
    REQUIRE(complaints_of("a: |\n  x\n  y\n") == refused);
}

TEST_CASE("an invisible character is refused, as it stands and spelled out") {
    REQUIRE(complaints_of("a: x\xE2\x80\xAEy\n") ==
            Lines{"f:1:5: the invisible character U+202E, expected UTF-8 text"});
    REQUIRE(complaints_of("a: \"x\\u202Ey\"\n") ==
            Lines{"f:1:4: a: the invisible character U+202E, expected one plain line"});
    REQUIRE(complaints_of("\"a\\u200b\": 1\n") ==
            Lines{"f:1:1: the invisible character U+200B, expected one plain line"});
}

TEST_CASE("a text longer than any name is refused, and so is a key") {
    REQUIRE(complaints_of("a: " + repeated("x", 1001)) ==
            Lines{"f:1:4: a: a text of more than 1000 bytes, expected at most 1000"});
    REQUIRE(complaints_of("a: " + repeated("x", 1000)).empty());
    // Longer than YAML lets a key be at all without a mark.
    REQUIRE(complaints_of("? " + repeated("x", 1001) + "\n: 1\n").size() == 1);
}

TEST_CASE("a scalar of 50 MB is refused by the size of its file, before any parsing") {
    const fixture::PlantFolder folder;
    folder.write("plant.yaml", "plant: " + std::string(50'000'000, 'x') + "\n");
    REQUIRE(folder.complaints() == Lines{"plant.yaml: too large, expected at most 256 KB"});
}

TEST_CASE("a file of the largest size is read") {
    const std::string text = "a: 1\n" + std::string(largest_file - 5, '\n');
    REQUIRE(complaints_of(text).empty());
    REQUIRE(complaints_of(text + "\n") == Lines{"f: too large, expected at most 256 KB"});
}
