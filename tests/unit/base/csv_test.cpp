// CSV as people have it, and as somebody might send it who means harm.
#include <sys/resource.h>

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>

#include "host/base/csv.hpp"
#include "tests/unit/production/documents_bench.hpp"

using namespace flutebook;
using base::CsvLine;
using base::CsvReader;

namespace {

using Fields = std::vector<std::string>;

CsvReader open(const std::string& path) {
    auto opened = CsvReader::open(path);
    if (const auto* why = std::get_if<std::string>(&opened)) FAIL(*why);
    return std::move(std::get<CsvReader>(opened));
}

// The fields of every line; of a refused one its fault.
std::vector<Fields> lines_of(const std::string& text) {
    const fixture::TextFile file(text);
    auto reader = open(file.path());
    std::vector<Fields> lines;
    while (const auto* line = reader.next()) {
        lines.emplace_back(line->fields.begin(), line->fields.end());
        if (line->fault) lines.back().push_back("fault: " + *line->fault);
    }
    return lines;
}

// The address sanitizer keeps what was freed, and books of its own: what is used under it tells nothing.
#if defined(FLUTEBOOK_SANITIZED)
constexpr bool memory_tells = false;
#else
constexpr bool memory_tells = true;
#endif

long peak_kilobytes() {
    struct rusage used {};
    getrusage(RUSAGE_SELF, &used);
    return used.ru_maxrss;
}

// How much further the peak of memory rose while the work was done; nothing where that cannot be told.
template <typename Work>
long kilobytes_taken_by(const Work& work) {
    const long before = peak_kilobytes();
    work();
    return memory_tells ? peak_kilobytes() - before : 0;
}

constexpr long few_kilobytes = 4096;

std::string fault_in(const std::string& text) {
    const auto lines = lines_of("a,b\n" + text);
    return lines.size() == 2 && lines[1].size() == 1 ? lines[1][0] : "";
}

}  // namespace

TEST_CASE("a file with a byte order mark, CRLF and no end of its last line reads like any other") {
    const std::vector<Fields> expected = {{"a", "b"}, {"1", "2"}};
    CHECK(lines_of("a,b\n1,2\n") == expected);
    CHECK(lines_of("\xEF\xBB\xBF"
                   "a,b\r\n1,2\r\n") == expected);
    CHECK(lines_of("a,b\n1,2") == expected);
}

TEST_CASE("semicolons part fields where the header row has one, and commas are then text") {
    CHECK(lines_of("a;b\n1,5;x\n") == std::vector<Fields>{{"a", "b"}, {"1,5", "x"}});
    CHECK(lines_of("a,b\n1;5,x\n") == std::vector<Fields>{{"a", "b"}, {"1;5", "x"}});
}

TEST_CASE("a field in quotes may hold separators and quotes that are written twice") {
    CHECK(lines_of("a,b\n\"1,2\",\"say \"\"no\"\"\"\n") == std::vector<Fields>{{"a", "b"}, {"1,2", "say \"no\""}});
    CHECK(lines_of("\"a\" , \" b \"\n\"\",\n") == std::vector<Fields>{{"a", "b"}, {"", ""}});
}

TEST_CASE("spaces around fields and lines that hold nothing do not matter, and lines keep their numbers") {
    const fixture::TextFile file("a , b\n\n   \n,\n 1,2 \n");
    auto reader = open(file.path());
    REQUIRE(reader.next()->number == 1);
    const CsvLine* line = reader.next();
    REQUIRE(line != nullptr);
    CHECK(line->number == 5);
    CHECK(line->fields == std::vector<std::string_view>{"1", "2"});
    CHECK(reader.next() == nullptr);
}

TEST_CASE("stray quotes are refused with their line") {
    const std::string stray =
        "fault: found a stray quote; expected quotes around a whole field, with each inner quote doubled";
    CHECK(fault_in("\"open,2\n") == stray);
    CHECK(fault_in("\"a\"b,2\n") == stray);
    CHECK(fault_in("\"a\"\"\n") == stray);
    CHECK(fault_in("1\"2,3\n") ==
          "fault: found a quote within `1\"2`; expected quotes around a whole field, with each inner quote doubled");
}

TEST_CASE("a quoted field does not run on into the next line, which is read for itself") {
    const auto lines = lines_of("a,b\n\"x\ny,z\n");
    REQUIRE(lines.size() == 3);
    CHECK(lines[1][0].rfind("fault: ", 0) == 0);
    CHECK(lines[2] == Fields{"y", "z"});
}

TEST_CASE("bytes that are not UTF-8, control characters and NULs are refused") {
    CHECK(fault_in("\xC3\x28,2\n") == "fault: found bytes that are not UTF-8; expected text in UTF-8");
    CHECK(fault_in("\xED\xA0\x80,2\n") == "fault: found bytes that are not UTF-8; expected text in UTF-8");
    CHECK(fault_in("a\tb,2\n") == "fault: found a control character; expected a line of plain text");
    CHECK(fault_in("a\rb,2\n") == "fault: found a control character; expected a line of plain text");
    CHECK(fault_in("\xC2\x9B"
                   "1,2\n") == "fault: found a control character; expected a line of plain text");
    CHECK(fault_in("M\xE2\x80\xAE"
                   "1,2\n") == "fault: found the invisible character U+202E; expected a line of plain text");
    // Nothing behind a NUL is read: this is no text.
    CHECK(fault_in(std::string("1,\0002\n3,4\n", 8)) == "fault: found a NUL byte; expected text in UTF-8");
}

TEST_CASE("more than 64 fields or 64 KB in a line are refused") {
    CHECK(lines_of("a,b\n" + std::string(63, ',') + "x\n")[1].size() == 64);
    CHECK(fault_in(std::string(64, ',') + "x\n") == "fault: found more than 64 fields; expected a row of a document");
    const auto longest = CsvReader::longest_line;
    CHECK(lines_of("a,b\n1," + std::string(longest - 2, 'x') + "\n")[1].size() == 2);
    CHECK(fault_in("1," + std::string(longest - 1, 'x') + "\n3,4\n") ==
          "fault: found a line of more than 64 KB; expected a row of a document");
}

TEST_CASE("a line of a gigabyte is refused without being read into memory") {
    const fixture::TextFile file("a,b\n1,2\n");
    // A hole: nothing is written, and what is read of it are NULs; no end of line among them.
    std::filesystem::resize_file(file.path(), std::uintmax_t{1} << 30U);
    const long taken = kilobytes_taken_by([&] {
        auto reader = open(file.path());
        CHECK(reader.next() != nullptr);
        CHECK(reader.next() != nullptr);
        const auto* line = reader.next();
        REQUIRE(line != nullptr);
        CHECK(line->fault == "found a line of more than 64 KB; expected a row of a document");
        CHECK(reader.next() == nullptr);
    });
    CHECK(taken < few_kilobytes);
}

TEST_CASE("a million rows are read in the memory of one") {
    const fixture::TextFile file("");
    {
        std::ofstream text(file.path());
        for (int i = 0; i < 1000000; ++i) text << "P-" << i << ",2026-10-01,early,C1,KL140,1234.5\n";
    }
    std::int64_t last = 0;
    const long taken = kilobytes_taken_by([&] {
        auto reader = open(file.path());
        while (const auto* line = reader.next()) last = line->number;
    });
    CHECK(last == 1000000);
    CHECK(taken < few_kilobytes);
}

TEST_CASE("what is no plain file is not opened") {
    const auto why = [](const std::string& path) {
        auto opened = CsvReader::open(path);
        const auto* text = std::get_if<std::string>(&opened);
        return text != nullptr ? *text : "opened";
    };
    CHECK(why("/no/such/file.csv") == "no such file");
    CHECK(why("/tmp") == "found a folder; expected a file of documents");
    CHECK(why("/dev/zero") == "found a pipe or device; expected a plain file");
}
