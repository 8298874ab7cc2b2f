// Which texts a person may write as a name, a number or a reason.
#include "host/base/characters.hpp"

#include <catch2/catch.hpp>

using namespace flutebook::base;

namespace {

// "at 1: a control character", of a text that begins with an `a`.
std::string character_fault_in(const std::string& text) {
    const auto at = first_fault(text);
    CHECK(is_plain_line(text) == !at);
    return at ? "at " + std::to_string(*at) + ": " + fault_text(text, *at) : "";
}

}  // namespace

TEST_CASE("letters, marks and signs of every script are plain text") {
    for (const char* text : {"", "Kühn & Söhne", "纸箱", "कागज़", "e\xCC\x81",
                             "a\xC2\xA0"
                             "b",
                             "\xF0\x9F\x93\xA6", "\xEF\xBF\xBD"})
        CHECK(character_fault_in(text).empty());
}

TEST_CASE("bidirectional controls are no plain text, and are named") {
    for (const auto& [bytes, name] : {std::pair{"\xD8\x9C", "U+061C"},
                                      {"\xE2\x80\x8E", "U+200E"},
                                      {"\xE2\x80\x8F", "U+200F"},
                                      {"\xE2\x80\xAA", "U+202A"},
                                      {"\xE2\x80\xAE", "U+202E"},
                                      {"\xE2\x81\xA6", "U+2066"},
                                      {"\xE2\x81\xA9", "U+2069"}})
        CHECK(character_fault_in("a" + std::string(bytes) + "b") ==
              "at 1: the invisible character " + std::string(name));
}

TEST_CASE("what cannot be seen and what breaks a line is no plain text") {
    for (const auto& [bytes, name] : {std::pair{"\xE2\x80\xA8", "U+2028"},
                                      {"\xE2\x80\xA9", "U+2029"},
                                      {"\xE2\x80\x8B", "U+200B"},
                                      {"\xE2\x80\x8D", "U+200D"},
                                      {"\xE2\x81\xA0", "U+2060"},
                                      {"\xEF\xBB\xBF", "U+FEFF"},
                                      {"\xC2\xAD", "U+00AD"},
                                      {"\xE3\x85\xA4", "U+3164"},
                                      {"\xF3\xA0\x81\x81", "U+E0041"}})
        CHECK(character_fault_in("a" + std::string(bytes)) == "at 1: the invisible character " + std::string(name));
}

TEST_CASE("control characters of both ranges are no plain text") {
    for (const char* text : {"a\x01", "a\t", "a\n", "a\r", "a\x1b[2J", "a\x7F", "a\xC2\x80", "a\xC2\x9B", "a\xC2\x85"})
        CHECK(character_fault_in(text) == "at 1: a control character");
    CHECK(character_fault_in(std::string("a\0", 2)) == "at 1: a NUL byte");
}

TEST_CASE("bytes that are not UTF-8 are no plain text") {
    for (const char* text : {"a\xFF", "a\xC0\xAF", "a\xED\xA0\x80", "a\xF4\x90\x80\x80", "a\xE2\x82", "a\x80"})
        CHECK(character_fault_in(text) == "at 1: bytes that are not UTF-8");
}
