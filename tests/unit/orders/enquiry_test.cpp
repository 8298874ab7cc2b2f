// An enquiry in one line, as a person says it.
#include "host/orders/enquiry.hpp"

#include <catch2/catch.hpp>

#include "host/base/errors.hpp"
#include "host/orders/enquiry_words.hpp"
#include "host/orders/request.hpp"
#include "host/orders/request_text.hpp"
#include "host/plant/plant.hpp"

using namespace flutebook;
using namespace flutebook::orders;
using namespace std::chrono_literals;

namespace {

const plant::Plant& demo() {
    static const plant::Plant plant = plant::read_plant(FLUTEBOOK_SOURCE_DIR "/config/demo");
    return plant;
}

constexpr auto today = 2026y / std::chrono::October / 15;

Request request_of(const std::string& line) {
    const base::Node tree = read_enquiry(demo(), line, today);
    return read_request(demo(), tree, enquiry_name, request_text(tree), std::nullopt);
}

std::vector<std::string> refusals(const std::string& line) {
    try {
        static_cast<void>(request_of(line));
    } catch (const InputError& error) {
        return error.lines();
    }
    return {};
}

}  // namespace

TEST_CASE("an enquiry in a line is a request, whatever the order of its words") {
    for (const std::string line :
         {"0201 400x300x250 B-140 500 1000 5000 2c 18%", "18% 2c B-140 500 1000 5000 400 x 300 x 250 mm 0201"}) {
        CAPTURE(line);
        const Request request = request_of(line);
        CHECK(request.style == "0201");
        REQUIRE(request.inside.has_value());
        CHECK(request.inside->length_mm == 400);
        CHECK(request.inside->width_mm == 300);
        CHECK(request.inside->height_mm == 250);
        CHECK(demo().boards[request.board].code == "B-140");
        CHECK(request.quantities == std::vector<double>{500, 1000, 5000});
        CHECK(request.colours == 2);
        CHECK(request.margin == 0.18);
        CHECK(request.date == base::Date(today));
    }
}

TEST_CASE("a size in inches may have fractions, and its unit stands once") {
    const Request request = request_of("0201 15 1/4x12 x 10 1/2 in B-140 500 18%");
    REQUIRE(request.inside.has_value());
    CHECK(request.inside->length_mm == Approx(387.35).epsilon(1e-12));
    CHECK(request.inside->width_mm == Approx(304.8).epsilon(1e-12));
    CHECK(request.inside->height_mm == Approx(266.7).epsilon(1e-12));
}

TEST_CASE("at a plant that is shown us units a typed size without a unit is in inches, and one in mm in mm") {
    const plant::Plant plant = plant::read_plant(FLUTEBOOK_SOURCE_DIR "/config/demo-us");
    const auto length_of = [&](const std::string& line) {
        const base::Node tree = read_enquiry(plant, line, today);
        return read_request(plant, tree, enquiry_name, request_text(tree), std::nullopt).inside->length_mm;
    };
    CHECK(length_of("0201 15 1/4x12x10 C-35 500 18%") == Approx(387.35).epsilon(1e-12));
    CHECK(length_of("0201 16x12x10 C-35 500 18%") == Approx(406.4).epsilon(1e-12));
    CHECK(length_of("0201 16x12x10 in C-35 500 18%") == Approx(406.4).epsilon(1e-12));
    CHECK(length_of("0201 400x300x250mm C-35 500 18%") == 400);
    const std::string words = enquiry_in_words(read_enquiry(plant, "0201 16x12x10 C-35 500 18%", today));
    CHECK(words.find("inside 16 in x 12 in x 10 in") != std::string::npos);
}

TEST_CASE("a share in per cent is a decimal, moved by two places and not divided") {
    CHECK(share_of("18%") == "0.18");
    CHECK(share_of("12.5%") == "0.125");
    CHECK(share_of("7%") == "0.07");
    CHECK(share_of("20%") == "0.2");
    CHECK(share_of("0%") == "0");
    CHECK_FALSE(share_of("%").has_value());
    CHECK_FALSE(share_of("18").has_value());
}

TEST_CASE("machines, a day, a customer and a model's settings are words of an enquiry too") {
    const Request request =
        request_of("0201 400x300x250 B-140 500 18% FG1 2026-10-20 customer=\"Ashlar Tiles\" consumables.coverage=0.3");
    REQUIRE(request.route.has_value());
    REQUIRE(request.route->size() == 1);
    CHECK(demo().converters[request.route->front()].code == "FG1");
    CHECK(request.date == base::Date(2026y / std::chrono::October / 20));
    CHECK(request.customer == "Ashlar Tiles");
    CHECK(request.find_extras("consumables") != nullptr);
}

TEST_CASE("the same words make the same request number on any day, other words another") {
    const std::string line = "0201 400x300x250 B-140 500 18%";
    CHECK(request_of(line).number == request_of(line).number);
    CHECK(request_of(line).number != request_of(line + " 2c").number);
    const base::Node later = read_enquiry(demo(), line, 2026y / std::chrono::October / 16);
    CHECK(later.find("request")->text == request_of(line).number);
}

TEST_CASE("the meaning of an enquiry is printed in words") {
    CHECK(enquiry_in_words(read_enquiry(demo(), "0201 400x300x250 B-140 500 1000 2c 18%", today)) ==
          "style 0201, inside 400 x 300 x 250 mm, board B-140, quantity 500 1000, colours 2, margin 18%, date "
          "2026-10-15, request " +
              request_of("0201 400x300x250 B-140 500 1000 2c 18%").number);
}

TEST_CASE("a margin that is none, or not said yet, is asked for in per cent, as a line says it") {
    CHECK(refusals("0201 400x300x250 B-140 500 180%") ==
          std::vector<std::string>{"enquiry:1:28: margin: out of range: found 180%, expected a margin from 0% to below "
                                   "100% of the price, as in 18%"});
    CHECK(refusals("0201 400x300x250 B-140 500") ==
          std::vector<std::string>{
              "enquiry:1:1: margin: missing: expected a margin from 0% to below 100% of the price, as in 18%"});
}

TEST_CASE("a word that says nothing is refused at its column, with what is known") {
    const auto lines = refusals("0201 400x300x250 B-999 500 18%");
    REQUIRE(lines.size() == 1);
    CHECK(lines.front().find("enquiry:1:18: ") == 0);
    CHECK(lines.front().find("`B-999`") != std::string::npos);
    CHECK(lines.front().find("B-140") != std::string::npos);
    CHECK(lines.front().find("did you mean") == std::string::npos);
}

TEST_CASE("every unknown word and every repeated value is reported") {
    CHECK(refusals("0201 400x300x250 nonsense B-140 500 18% 20% ???").size() == 3);
    CHECK(refusals("0201 0201 400x300x250 B-140 500 18%").size() == 1);
}

TEST_CASE("what an enquiry lacks is named as of any request") {
    const auto lines = refusals("0201 400x300x250 500");
    CHECK(lines.size() == 2);
    for (const auto& line : lines) CHECK(line.find("enquiry:1:") == 0);
}

TEST_CASE("a number with a sign is written as a number") {
    const base::Node tree = read_enquiry(demo(), "0201 400x300x250 B-140 500 18% delivery.distance=-3", today);
    CHECK(request_text(tree).find("{distance: -3}") != std::string::npos);
}

TEST_CASE("the text of a request reads back to the same request") {
    const base::Node tree = read_enquiry(
        demo(), "0201 15 1/4x12x10 in B-140 500 1000 18% FG1 customer=\"A: \\ {b}\" consumables.coverage=0.3", today);
    const Request line = read_request(demo(), tree, enquiry_name, request_text(tree), std::nullopt);
    const Request text = read_request(demo(), "kept.yaml", request_text(tree), std::nullopt);
    CHECK(text.number == line.number);
    CHECK(text.customer == line.customer);
    CHECK(text.inside->length_mm == line.inside->length_mm);
    CHECK(text.quantities == line.quantities);
    CHECK(text.route == line.route);
    CHECK(text.margin == line.margin);
    CHECK(text.text == line.text);
}

TEST_CASE("a fraction that no rule shows is refused as such, at the column of its size") {
    for (const std::string fraction : {"1/0", "9/4"}) {
        const auto lines = refusals("0201 15 " + fraction + "x12x10 in B-140 500 18%");
        REQUIRE(lines.size() == 1);
        CHECK(lines.front().find("enquiry:1:6: inside.length: no fraction of a length: found `" + fraction + "`") == 0);
    }
}

TEST_CASE("a number with a space in it is refused with the number to write") {
    CHECK(refusals("0201 400x300x250 B-140 1 000 18%") ==
          std::vector<std::string>{"enquiry:1:24: a space within a number: found `1 000`; write 1000"});
    CHECK(refusals("0201 400x300x250 B-140 1 000 000 18%") ==
          std::vector<std::string>{"enquiry:1:24: a space within a number: found `1 000 000`; write 1000000"});
    CHECK(refusals("0201 400x300x250 B-140 2,500 18%") ==
          std::vector<std::string>{"enquiry:1:24: not understood: found `2,500`; write 2500 or 2.500"});
    CHECK(request_of("0201 400x300x250 B-140 100 250 500 18%").quantities.size() == 3);
}

TEST_CASE("an empty line is refused with one line") {
    for (const std::string line : {"", "   "}) {
        const auto lines = refusals(line);
        REQUIRE(lines.size() == 1);
        CHECK(lines.front().find("enquiry:1:1: an empty enquiry: found an empty line; write ") == 0);
    }
}

TEST_CASE("two quantities that may be one number with a mark of thousands are doubted") {
    const auto doubts = [](const std::string& quantities) {
        return read_request(demo(), "r.yaml",
                            "request: R-1\ndate: 2026-10-15\nstyle: \"0201\"\ninside: {length: 400, width: 300, "
                            "height: 250}\nboard: B-140\nquantities: " +
                                quantities + "\nmargin: 0.2\n",
                            std::nullopt)
            .doubts;
    };
    const auto of_2500 = doubts("[2,500]");
    REQUIRE(of_2500.size() == 1);
    CHECK(of_2500.front().at == "r.yaml:6:14");
    CHECK(of_2500.front().text == "quantities: unusual: found 2 and 500; if one number was meant, write 2500");
    for (const std::string plain : {"[2, 500]", "[250,500]", "[25,1000]", "[500]"}) {
        CAPTURE(plain);
        CHECK(doubts(plain).empty());
    }
    CHECK(request_of("0201 400x300x250 B-140 2 500 18%").doubts.size() == 1);
}
