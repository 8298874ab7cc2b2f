// Files that cannot be read are told as such, and waited for never.
#include <sys/stat.h>
#include <unistd.h>

#include <catch2/catch.hpp>

#include "tests/unit/plant/plant_folder.hpp"

using namespace flutebook;
using fixture::Lines;
using fixture::PlantFolder;

TEST_CASE("a missing file is told by its name, and the others are read all the same") {
    const PlantFolder folder;
    folder.remove("papers.yaml");
    folder.change("plant.yaml", "units: metric", "units: other");
    REQUIRE(folder.complaints() ==
            Lines{"plant.yaml:3:8: units: not a choice: found `other`, expected one of `metric`, `us`",
                  "papers.yaml: no such file"});
}

TEST_CASE("a folder where a file should be is told") {
    const PlantFolder folder;
    folder.remove("plugins.yaml");
    std::filesystem::create_directory(folder.path("plugins.yaml"));
    REQUIRE(folder.complaints() == Lines{"plugins.yaml: a folder, expected a file"});
}

TEST_CASE("a pipe where a file should be is refused without waiting for a writer") {
    const PlantFolder folder;
    folder.remove("plugins.yaml");
    REQUIRE(::mkfifo(folder.path("plugins.yaml").c_str(), 0600) == 0);
    REQUIRE(folder.complaints() == Lines{"plugins.yaml: a pipe or device, expected a plain file"});
}

TEST_CASE("a link to itself is no file") {
    const PlantFolder folder;
    folder.remove("plugins.yaml");
    std::filesystem::create_symlink("plugins.yaml", folder.path("plugins.yaml"));
    const auto lines = folder.complaints();
    REQUIRE(lines.size() == 1);
    REQUIRE_THAT(lines[0], Catch::StartsWith("plugins.yaml: cannot be read: "));
}

TEST_CASE("a file that is not open to the reader is told") {
    const PlantFolder folder;
    std::filesystem::permissions(folder.path("plugins.yaml"), std::filesystem::perms::none);
    // Whoever may read everything reads this too.
    const Lines expected = ::access(folder.path("plugins.yaml").c_str(), R_OK) == 0
                               ? Lines{}
                               : Lines{"plugins.yaml: cannot be read: check its permissions"};
    REQUIRE(folder.complaints() == expected);
}

TEST_CASE("a request that is not there is the request's error") {
    const PlantFolder folder;
    folder.remove("r.yaml");
    REQUIRE(folder.request_complaints() == Lines{"r.yaml: no such file"});
}

TEST_CASE("an empty file is told what it should hold") {
    const PlantFolder folder;
    folder.write("boards.yaml", "");
    REQUIRE(folder.complaints() == Lines{"boards.yaml:1:1: wrong type: found nothing, expected a map"});
}
