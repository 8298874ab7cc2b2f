// An error of a model has the same message in this process and in a process of its own: an error of its file, its
// description, its place among the other models, or its results.
#include <catch2/catch.hpp>

#include <fmt/format.h>

#include "host/base/errors.hpp"
#include "tests/plugin_worker/workbench.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;

namespace {

// The host's message when it opens the plant, or else for the first order.
std::string said(const plant::Plant& plant) {
    try {
        const engine::Engine engine = isolated::open(plant);
        return isolated::quoted(plant, engine, fixture::box_request(plant));
    } catch (const ModelError& error) {
        return fmt::format("{}", fmt::join(error.lines(), "\n"));
    }
}

void check_same_words(const std::string& way, const std::string& model) {
    INFO(way);
    plant::Plant plant = fixture::small_plant();
    plant.folder = std::string(FLUTEBOOK_BAD_PLUGINS) + "/" + way;
    if (model != "run") plant.models.push_back(fixture::model_entry(model));
    const std::string here = said(plant);
    isolated::isolate(plant, {model});
    CHECK(said(plant) == here);
    CHECK_THAT(here, Catch::Contains(way + "/plugins/" + model + ".so: model " + model));
}

}  // namespace

TEST_CASE("a file that cannot be loaded is refused in the same words") {
    for (const std::string way : {"no_symbol", "flushes_when_loaded", "not_a_library", "undefined_symbol"})
        check_same_words(way, way);
}

TEST_CASE("a description that is refused is refused in the same words") {
    for (const std::string way :
         {"wrong_magic", "newer_major", "too_small", "wrong_id", "null_evaluate", "null_name", "duplicate_name",
          "upside_down_range", "default_out_of_range", "unknown_axis", "absurd_count", "absurd_stride",
          "list_of_nothing", "broken_text", "endless_text", "unknown_unit"})
        check_same_words(way, way);
}

TEST_CASE("a model that does not fit beside the others is refused in the same words") {
    for (const std::string way : {"unit_clash", "missing_need", "double_provider"}) check_same_words(way, way);
}

TEST_CASE("a model with an error in its evaluation is reported in the same words") {
    for (const std::string way :
         {"throws", "charges_too_much", "charges_no_number", "returns_a_fault", "refuses_for_no_reason"})
        check_same_words(way, way);
    for (const std::string way :
         {"loses_a_kilogram", "sheds_below_zero", "leaves_nan", "gives_infinity", "leaves_its_range",
          "changes_rounding", "flushes_when_called", "arms_traps", "throws_past_the_border"})
        check_same_words(way, "run");
}

TEST_CASE("an isolated model is never opened in this process instead") {
    plant::Plant plant = fixture::small_plant();
    isolated::isolate(plant, {"paper"});
    CHECK_THROWS_WITH(engine::Engine::start(plant, FLUTEBOOK_PLUGIN_DIR),
                      "plugins.yaml:1:1: isolation.paper: this program has no other process to give it; take the entry "
                      "out");
}
