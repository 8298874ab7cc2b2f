// What a library's file declares, and that no damaged file makes the reader leave its memory.
#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <random>
#include <string>
#include <vector>

#include "host/sandbox/shared_object.hpp"
#include "tests/plugin_check/running.hpp"

using flutebook::check::plugin;
using namespace flutebook::sandbox;

namespace {

std::vector<char> bytes_of(const std::string& file) {
    std::ifstream stream(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
}

ReadObject read(const std::vector<char>& bytes) {
    // In memory of exactly its size, so that a sanitizer finds a read past its end.
    const std::vector<char> item(bytes.begin(), bytes.end());
    return read_shared_object({reinterpret_cast<const std::byte*>(item.data()), item.size()});
}

}  // namespace

TEST_CASE("a library's file gives its exports, its needed libraries and its search path") {
    const ReadObject good = read(bytes_of(plugin("good")));
    REQUIRE(good.object);
    CHECK(std::count_if(good.object->exported.begin(), good.object->exported.end(),
                        [](const auto& symbol) { return symbol.name == "flutebook_plugin" && symbol.is_data; }) == 1);
    CHECK(good.object->searched.empty());
    const ReadObject needy = read(bytes_of(plugin("needs_a_library")));
    REQUIRE(needy.object);
    CHECK(std::count(needy.object->needed.begin(), needy.object->needed.end(), "libcheck_library_elsewhere.so") == 1);
    CHECK_FALSE(needy.object->searched.empty());
}

TEST_CASE("a program, a text and an empty file are no libraries") {
    CHECK_THAT(read(bytes_of(plugin("not_a_library"))).problem, Catch::Contains("does not begin with the ELF mark"));
    CHECK_THAT(read({}).problem, Catch::Contains("does not begin with the ELF mark"));
    std::vector<char> other = bytes_of(plugin("good"));
    other[18] = 8;  // another kind of machine
    CHECK_THAT(read(other).problem, Catch::Contains("another kind of machine"));
    std::vector<char> piece = bytes_of(plugin("good"));
    piece[16] = 1;  // an object file
    CHECK_THAT(read(piece).problem, Catch::Contains("a program or a piece of one"));
}

TEST_CASE("a damaged file is read without an error of memory") {
    const std::vector<char> good = bytes_of(plugin("good"));
    for (std::size_t size = 0; size < good.size(); size += 61) {
        const ReadObject cut = read({good.begin(), good.begin() + static_cast<std::ptrdiff_t>(size)});
        CHECK(cut.object.has_value() == cut.problem.empty());
    }
    std::mt19937 draws(1);
    for (int time = 0; time < 2000; ++time) {
        std::vector<char> bad = good;
        // Mostly in the tables.
        for (int i = 0; i < 8; ++i)
            bad[draws() % (time % 2 == 0 ? std::min<std::size_t>(bad.size(), 4096) : bad.size())] =
                static_cast<char>(draws());
        const ReadObject result = read(bad);
        CHECK(result.object.has_value() == result.problem.empty());
    }
}
