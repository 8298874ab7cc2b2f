// Styles of the library folded at many sizes on every flute.
#include <catch2/catch.hpp>

#include "host/base/errors.hpp"
#include "host/services/styles/check_styles.hpp"
#include "tests/support/property.hpp"
#include "tests/unit/services/demo_styles.hpp"

using namespace flutebook;
using plant_answers::CheckedStyle;
using plant_answers::StyleTrial;

namespace {

std::string told(const StyleTrial& trial) {
    std::string text = trial.flutes;
    for (const double side : trial.inside_mm) text += " " + std::to_string(side);
    text += ": " + trial.refusal;
    for (const blanks::FoldingFault& fault : trial.proof.faults) text += "\n  " + fault.text;
    return text + "\n";
}

std::string wrong_trials(const CheckedStyle& style) {
    std::string text;
    for (const std::vector<StyleTrial>* trials : {&style.trials, &style.wrong_boxes})
        for (const StyleTrial& trial : *trials)
            if (!trial.folds()) text += told(trial);
    return text;
}

}  // namespace

TEST_CASE("every style that is shipped folds at six sizes and for 40 random boxes on every flute") {
    plant_answers::StyleCheckOptions options;
    options.random_boxes = static_cast<std::size_t>(fixture::trials(40));  // slow builds take fewer
    options.bounds = blanks::SizeBounds::library;
    const plant::Plant plant = fixture::demo_plant_with("");
    const plant_answers::StyleCheck check = services::check_styles(plant, options);
    REQUIRE(check.styles.size() + 1 == plant.styles.size());  // all but the outline
    for (const CheckedStyle& style : check.styles) {
        INFO(style.code << "\n" << wrong_trials(style));
        CHECK(style.holds());
        CHECK(style.random_boxes == options.random_boxes * plant.allowances.size());
        CHECK(style.refused_boxes == 0);
    }
}

TEST_CASE("the same options try the same boxes, another seed tries others") {
    plant_answers::StyleCheckOptions options;
    options.code = "0201";
    options.random_boxes = 3;
    // Flaps that are too short: every box is wrong and kept.
    const plant::Plant plant =
        fixture::demo_plant_with("styles:\n  \"0201\": {like: \"0201\", across: [B/3, H + depth, B/3]}\n");
    const auto boxes = [&] {
        std::vector<std::array<double, 3>> sizes;
        const plant_answers::StyleCheck check = services::check_styles(plant, options);
        for (const StyleTrial& trial : check.styles.at(0).wrong_boxes) sizes.push_back(trial.inside_mm);
        return sizes;
    };
    const auto first = boxes();
    REQUIRE(first.size() == 3 * plant.allowances.size());
    REQUIRE(boxes() == first);
    options.seed = 2;
    REQUIRE(boxes() != first);
}

TEST_CASE("a style of a plant that does not fold says what collides, where and by how much") {
    const plant::Plant plant =
        fixture::demo_plant_with("styles:\n  ours: {like: \"0201\", across: [B/2 + 20, H + depth, B/2 + flap]}\n");
    plant_answers::StyleCheckOptions options;
    options.code = "ours";
    const plant_answers::StyleCheck check = services::check_styles(plant, options);
    REQUIRE_FALSE(check.holds());
    REQUIRE_THAT(told(check.styles.at(0).trials.at(0)), Catch::Contains("step 5: f1 and f3 land on one another"));
}

TEST_CASE("a check of an unknown style is answered with the styles that there are") {
    plant_answers::StyleCheckOptions options;
    options.code = "0210";
    REQUIRE_THROWS_AS(services::check_styles(fixture::demo_plant_with(""), options), InputError);
}
