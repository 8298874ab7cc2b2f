// What a mill pays for wet scrap, and what grade it is bought under, through the tickets and bales that are posted.
#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <string>

#include "host/production/scrap.hpp"
#include "tests/unit/production/documents_bench.hpp"

using namespace flutebook;
using namespace flutebook::fixture;
using Deduction = plant::Mill::Deduction;

namespace {

struct Load {
    double gross_kg, moisture;
    double form_a_10, form_b_10, form_a_12, form_b_12;  // kg paid at limits of 10 and 12 %
};

// Form A, dry-matter basis: payable = gross (100 - M) / (100 - M0), from memory; the principle by which pulp is sold at
// 90 % dryness (ISO 801, from memory). Form B, point for point: payable = gross (1 - max(0, M - M0) / 100), from
// memory. No published worked example was found: these loads are invented, their results computed from the formulas
// with exact fractions. M0 = 10 % after CEPI's quality control guidelines of April 2016, as the trade press reported
// them (seen at second hand); M0 = 12 %, one integrated producer quoted in Recycling Today, "Aligning on moisture",
// 2017 (seen). That a dry load earns no bonus: from memory.
const Load loads[] = {
    {24000, 0.14, 22933.33, 23040.00, 23454.55, 23520.00},
    {24000, 0.12, 23466.67, 23520.00, 24000.00, 24000.00},
    {24000, 0.10, 24000.00, 24000.00, 24000.00, 24000.00},
    {18500, 0.155, 17369.44, 17482.50, 17764.20, 17852.50},
};

}  // namespace

TEST_CASE("a wet load is paid by dry matter or point for point, and a dry one as it was weighed") {
    for (const auto& load : loads) {
        CAPTURE(load.gross_kg, load.moisture);
        const auto paid = [&](double limit, Deduction form) {
            return production::paid_kg({"", limit, form, {}}, load.gross_kg, load.moisture);
        };
        CHECK(paid(0.10, Deduction::dry_matter) == Approx(load.form_a_10).margin(0.005));
        CHECK(paid(0.10, Deduction::point_for_point) == Approx(load.form_b_10).margin(0.005));
        CHECK(paid(0.12, Deduction::dry_matter) == Approx(load.form_a_12).margin(0.005));
        CHECK(paid(0.12, Deduction::point_for_point) == Approx(load.form_b_12).margin(0.005));
    }
}

TEST_CASE("paying by dry matter pays the same dry fibre whatever the water") {
    // Bone-dry mass of the same loads: 20640, 21120, 21600 and 15632.5 kg (computed).
    const double bone_dry_kg[] = {20640, 21120, 21600, 15632.5};
    for (std::size_t i = 0; i < std::size(loads); ++i) {
        const auto paid =
            production::paid_kg({"", 0.10, Deduction::dry_matter, {}}, loads[i].gross_kg, loads[i].moisture);
        CHECK(paid * 0.90 == Approx(bone_dry_kg[i]).epsilon(1e-12));
    }
}

TEST_CASE("a posted ticket is worth its settlement to the gram") {
    KnownBook book;  // Northweir: dry matter from 10 %; Saltmarsh: point for point from 12 %
    const auto paid_g = [&](const char* mill, const Load& load) {
        const auto row = fmt::format("T1,2026-10-09,{},4.01.00,,{},{},85", mill, load.gross_kg, load.moisture);
        return moved(draft_of(ticket_header, row, book), std::string("mill:") + mill, "revenue");
    };
    for (const auto& load : loads) {
        CAPTURE(load.gross_kg, load.moisture);
        CHECK(static_cast<double>(paid_g("Northweir", load)) == Approx(load.form_a_10 * 1000).margin(5.5));
        CHECK(static_cast<double>(paid_g("Saltmarsh", load)) == Approx(load.form_b_12 * 1000).margin(5.5));
    }
}

TEST_CASE("recovered paper is known by the codes of EN 643, by their shape") {
    // EN 643:2014 (title and edition seen in DIN's catalogue). Codes and names of group 4 as a collector's page of the
    // standard's kraft grades and a trader's list print them, 4.02 and 4.03 as two traders do (seen at second
    // hand); 1.04 and 1.05, corrugated from shops and households, from memory.
    const std::pair<const char*, const char*> published[] = {{"4.01.00", "new shavings of corrugated board"},
                                                             {"4.01.01", "unused corrugated kraft"},
                                                             {"4.01.02", "unused corrugated material"},
                                                             {"4.02.00", "used corrugated kraft 1"},
                                                             {"4.03.00", "used corrugated kraft 2"},
                                                             {"4.06.00", "used kraft"},
                                                             {"4.07.00", "new kraft shavings"},
                                                             {"4.08.00", "new carrier kraft"}};
    for (const auto& [code, name] : published) {
        CAPTURE(code);
        CHECK(production::is_grade(code));
        CHECK(production::grade_name(code) == std::string(name));
    }
    // A variety that no list here names is a grade all the same; five groups, two digits each.
    CHECK(production::is_grade("1.04.02"));
    CHECK(production::is_grade("5.14.00"));
    CHECK_FALSE(production::grade_name("5.14.00"));
    for (const auto* other : {"4.01", "4.1.0", "0.01.00", "6.01.00", "4-01-00", "4.01.000", "4.01.0x", "PS 13", ""})
        CHECK_FALSE(production::is_grade(other));
}

TEST_CASE("a bale under any grade of that shape can be posted") {
    KnownBook book;
    for (const auto& grade : production::box_plant_grades()) {
        const auto row = std::string("B1,2026-10-01,late,") + grade.code + ",512";
        CHECK(moved_of(draft_of(bale_header, row, book), grade.code, "loose-scrap", "bale-yard") == 512000);
    }
}
