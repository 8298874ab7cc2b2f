// Reports as parts of a page.
#include "host/pages/report_parts.hpp"

#include <catch2/catch.hpp>

using namespace flutebook;

namespace {

std::string shown_without(const std::string& folder, const std::string& text) {
    render::ReportSection section;
    section.blocks.emplace_back(render::Note{text});
    return std::get<render::Note>(pages::without_folder(section, folder).blocks.front()).text;
}

}  // namespace

TEST_CASE("a file of the plant stands on a page by its name alone") {
    CHECK(shown_without("config/demo", "run_waste; config/demo/machines.yaml:11:61") ==
          "run_waste; machines.yaml:11:61");
}

TEST_CASE("a file that is named from the root on stands on a page by its name alone") {
    CHECK(shown_without("config/demo", "of the request; /srv/config/demo/requests/R-1.yaml:9:9, 9:43") ==
          "of the request; requests/R-1.yaml:9:9, 9:43");
}

TEST_CASE("files of another folder are left as they are") {
    CHECK(shown_without("config/demo", "found in /srv/other/machines.yaml:1:1") ==
          "found in /srv/other/machines.yaml:1:1");
}
