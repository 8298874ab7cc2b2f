// The C header is frozen: where every field lies is written in plugin_layout.txt, and a plugin built against an older
// header finds it there for ever. A release may append lines to a struct's end; no line changes.
#include "tests/unit/sdk/layout.h"

#include <flutebook/plugin.h>
#include <fmt/format.h>
#include <catch2/catch.hpp>

#include <fstream>
#include <sstream>
#include <string>
#include <type_traits>

namespace {

std::string layout_as_text() {
    std::string text =
        "# Where everything in flutebook/plugin.h lies: offset, bytes, kind, field. Lines are added, never changed.\n";
    for (std::size_t i = 0; i < layout_row_count; ++i) {
        const layout_row& row = layout_rows[i];
        text += row.field == nullptr ? fmt::format("\n{}: {} bytes\n", row.type, row.size)
                                     : fmt::format("{:4} {:3}  {:17} {}\n", row.offset, row.size, row.kind, row.field);
    }
    text += "\n";
    for (std::size_t i = 0; i < layout_constant_count; ++i)
        text += fmt::format("{} = {}\n", layout_constants[i].name, layout_constants[i].value);
    return text;
}

std::string read(const std::string& file) {
    std::ifstream in(file, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

}  // namespace

TEST_CASE("every field of the C header lies where the first release put it") {
    const std::string committed = FLUTEBOOK_SOURCE_DIR "/tests/unit/sdk/plugin_layout.txt";
    const std::string found = FLUTEBOOK_BINARY_DIR "/plugin_layout.txt";
    std::ofstream(found, std::ios::binary) << layout_as_text();
    INFO("see and take the difference with: diff " << committed << " " << found << "; cp " << found << " "
                                                   << committed);
    CHECK(layout_as_text() == read(committed));
}

// A field that was added to the header but not to the table leaves a hole.
TEST_CASE("the table of the layout knows every byte of every struct") {
    std::size_t end = 0, size = 0;
    std::string type;
    for (std::size_t i = 0; i < layout_row_count; ++i) {
        const layout_row& row = layout_rows[i];
        if (row.field == nullptr) {
            INFO(type);
            CHECK(end == size);
            end = 0;
            size = row.size;
            type = row.type;
            continue;
        }
        INFO(type << "." << row.field);
        CHECK(row.type == type);
        CHECK(row.offset == end);
        end = row.offset + row.size;
    }
    CHECK(end == size);
    CHECK(type == "flutebook_model");
}

TEST_CASE("C++ sees the structs as C does") {
    const auto size_in_c = [](const std::string& type) {
        for (std::size_t i = 0; i < layout_row_count; ++i)
            if (layout_rows[i].type == type && layout_rows[i].field == nullptr) return layout_rows[i].size;
        return std::size_t{0};
    };
    CHECK(size_in_c("flutebook_span") == sizeof(flutebook_span));
    CHECK(size_in_c("flutebook_name") == sizeof(flutebook_name));
    CHECK(size_in_c("flutebook_setting") == sizeof(flutebook_setting));
    CHECK(size_in_c("flutebook_line") == sizeof(flutebook_line));
    CHECK(size_in_c("flutebook_loss") == sizeof(flutebook_loss));
    CHECK(size_in_c("flutebook_block") == sizeof(flutebook_block));
    CHECK(size_in_c("flutebook_model") == sizeof(flutebook_model));
    static_assert(std::is_standard_layout_v<flutebook_block> && std::is_trivially_copyable_v<flutebook_block>);
    static_assert(std::is_standard_layout_v<flutebook_model> && std::is_trivially_copyable_v<flutebook_model>);
}
