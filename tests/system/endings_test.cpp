// Where the answer cannot be delivered the program ends in order: never by a signal, never with 0.
#include <catch2/catch.hpp>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;

namespace {

Ended quote_into(StandardOutput output, const std::vector<std::string>& options = {}) {
    Child child{{FLUTEBOOK_PROGRAM, "--plant", demo_plant(), "quote", demo_request("R-1001"), demo_request("R-1002")}};
    child.words.insert(child.words.end(), options.begin(), options.end());
    child.output = output;
    return run(child);
}

}  // namespace

TEST_CASE("the program ends without a message when the reader of its output has gone") {
    for (const std::vector<std::string>& options : {std::vector<std::string>{}, std::vector<std::string>{"--json"}}) {
        const Ended ended = quote_into(StandardOutput::reader_gone, options);
        CHECK(ended.signal == 0);
        CHECK(ended.exit_code == 1);
        CHECK(ended.errors.empty());
    }
}

TEST_CASE("a full disk is reported once") {
    const Ended ended = quote_into(StandardOutput::full_disk);
    CHECK(ended.exit_code == 1);
    CHECK(ended.errors == "standard output: cannot be written: No space left on device; send the answer elsewhere\n");
}

TEST_CASE("a closed standard output is reported, and no other file is written instead") {
    const Ended ended = quote_into(StandardOutput::closed);
    CHECK(ended.exit_code == 1);
    CHECK(ended.errors == "standard output: cannot be written: Bad file descriptor; send the answer elsewhere\n");
}

TEST_CASE("help that cannot be printed ends with 1 as well") {
    Child child{{FLUTEBOOK_PROGRAM, "--help"}};
    child.output = StandardOutput::full_disk;
    CHECK(run(child).exit_code == 1);
}

TEST_CASE("an answer that could not be written does not hide that the plant is not fit") {
    Child child{{FLUTEBOOK_PROGRAM, "--plant", "/nowhere/at/all", "plugin", "list"}};
    child.output = StandardOutput::full_disk;
    CHECK(run(child).exit_code == 3);
}
