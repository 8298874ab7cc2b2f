// A form's fields and a line are two ways to write one enquiry.
#include "host/orders/enquiry_fields.hpp"

#include <catch2/catch.hpp>

using namespace flutebook;
using namespace flutebook::orders;

namespace {

const plant::Plant& plant_of_fields() {
    static const plant::Plant plant = plant::read_plant(FLUTEBOOK_SOURCE_DIR "/config/demo");
    return plant;
}

std::string there_and_back(const std::string& line) {
    return enquiry_line(enquiry_fields(plant_of_fields(), line));
}

}  // namespace

TEST_CASE("a line that fills the fields of a form is written by them again") {
    for (const std::string line :
         {"0201 400x300x250 B-140 500 1000 5000 2c 18% FG1 2026-10-15", "0201 400x300x250 B-140 500 12.5%",
          "0201 15 1/4x12x10 in B-140 500 18%", "0110 400x300 B-140 500 18%",
          "0201 400x300x250 B-140 500 18% PR1 DC1 FG1 consumables.coverage=0.3 customer=\"Ashlar Tiles\" "
          "request=R-7"}) {
        CHECK(there_and_back(line) == line);
    }
}

TEST_CASE("words in any order fill the same fields") {
    CHECK(there_and_back("18% 2c 500 1000 B-140 400 x 300 x 250 mm 0201") ==
          "0201 400x300x250 mm B-140 500 1000 2c 18%");
}

TEST_CASE("a margin as a share is shown in per cent") {
    CHECK(enquiry_fields(plant_of_fields(), "margin=0.18").margin == "18");
}

TEST_CASE("a word that says nothing leaves its field empty and the others filled") {
    const EnquiryFields fields = enquiry_fields(plant_of_fields(), "0201 400x300x250 B-999 500");
    CHECK(fields.style == "0201");
    CHECK(fields.board.empty());
    CHECK(fields.quantities == "500");
}

TEST_CASE("fields that were left empty, or hold spaces alone, are not in the line") {
    EnquiryFields fields;
    fields.style = " 0201 ";
    fields.margin = "  ";
    fields.customer = "\"A\" B";
    CHECK(enquiry_line(fields) == "0201 customer=\"A B\"");
}

TEST_CASE("a request's file fills the fields of its revision, which has a day of its own") {
    const auto fields = request_fields(
        "request: R-1\ndate: 2026-10-15\nstyle: \"0201\"\ninside: {length: 400, width: 300, height: 250}\n"
        "board: B-140\nquantities: [500, 1000]\nmargin: 0.18\ncolours: 2\nroute: [FG1]\n"
        "extras: {consumables: {coverage: 0.15}}\ncopied_from: Q000001\n");
    REQUIRE(fields);
    CHECK(enquiry_line(*fields) == "0201 400x300x250 B-140 500 1000 2c 18% FG1 consumables.coverage=0.15 request=R-1");
}

TEST_CASE("a request that says more than a line can is no line") {
    const std::string rest = "request: R-1\nboard: B-140\nquantities: [500]\n";
    CHECK_FALSE(request_fields(rest + "style: outline\noutline: {length: 492, width: 344, area: 0.1374}\n"));
    CHECK_FALSE(request_fields(rest + "style: \"0201\"\noutside: {length: 400, width: 300, height: 250}\n"));
    CHECK_FALSE(request_fields(rest + "style: \"0301\"\nroute: {body: [DC1], lid: [DC1]}\n"));
    CHECK_FALSE(request_fields("["));
    CHECK(request_fields(rest + "style: \"0201\"\n"));
}
