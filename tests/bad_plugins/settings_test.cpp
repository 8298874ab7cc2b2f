// Settings that do not fit what a model declares: every error of the plant's file at once, with file, line and column.
#include "tests/bad_plugins/says.hpp"
#include "tests/bad_plugins/trial.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;
using bad::Says;
using bad::Trial;

namespace {

plant::ModelSettings& entry_of(plant::Plant& plant, const std::string& id) {
    for (plant::ModelSettings& entry : plant.models)
        if (entry.id == id) return entry;
    FAIL("the plant lists no " + id);
    return plant.models.front();
}

// The small plant, with other settings for one of its models: from line 3 on, a line each.
Trial with_settings(const std::string& id, const std::vector<std::pair<std::string, std::string>>& settings) {
    Trial trial("not_there");
    entry_of(trial.plant(), id) = fixture::model_entry(id, settings);
    return trial;
}

}  // namespace

TEST_CASE("a setting below its range is refused at its line") {
    const Trial trial = with_settings("scrap", {{"scrap_price", "85"}, {"handling", "-1"}});
    CHECK_THAT(trial.refusal(),
               Says({"plugins.yaml:4:20: plugins.scrap.handling: ", "out of range: found -1, expected 0 to "}));
    CHECK(trial.host_lives_on());
}

TEST_CASE("a setting that the model does not have is refused at its key, with the nearest that it has") {
    const Trial trial = with_settings("scrap", {{"scrap_prise", "85"}, {"scrap_price", "85"}, {"handling", "18"}});
    CHECK_THAT(trial.refusal(), Says({"plugins.yaml:3:7: plugins.scrap.scrap_prise: ", "unknown setting of scrap",
                                      "did you mean 'scrap_price'?"}));
    CHECK(trial.host_lives_on());
}

TEST_CASE("a setting without a default that is not given is refused at the model") {
    const Trial trial = with_settings("scrap", {{"scrap_price", "85"}});
    CHECK_THAT(trial.refusal(),
               Says({"plugins.yaml:2:5: plugins.scrap.handling: ", "missing: handling has no default"}));
    CHECK(trial.host_lives_on());
}

TEST_CASE("a setting in a unit of another kind is refused") {
    const Trial trial = with_settings("scrap", {{"scrap_price", "85 kg"}, {"handling", "18"}});
    CHECK_THAT(trial.refusal(), Says({"plugins.yaml:3:20: plugins.scrap.scrap_price: ", "`kg`"}));
    CHECK(trial.host_lives_on());
}

TEST_CASE("a choice that its range leaves out is refused, with those that are open") {
    Trial trial("narrow_choice", {"narrow_choice"});
    entry_of(trial.plant(), "narrow_choice") = fixture::model_entry("narrow_choice", {{"finish", "varnished"}});
    CHECK_THAT(trial.refusal(), Says({"plugins.narrow_choice.finish: ", "unknown choice: found 'varnished'",
                                      "expected one of plain, printed"}));
    entry_of(trial.plant(), "narrow_choice") = fixture::model_entry("narrow_choice", {{"finish", "printed"}});
    CHECK(trial.refusal().empty());
}

TEST_CASE("all errors of all settings are reported together") {
    const Trial trial = with_settings("scrap", {{"scrap_price", "a lot"}, {"handling", "-1"}, {"handlings", "1"}});
    const std::string refusal = trial.refusal();
    CHECK(refusal.find("plugins.yaml:3:20: plugins.scrap.scrap_price: ") != std::string::npos);
    CHECK(refusal.find("plugins.yaml:4:20: plugins.scrap.handling: ") != std::string::npos);
    CHECK(refusal.find("plugins.yaml:5:7: plugins.scrap.handlings: ") != std::string::npos);
    CHECK(trial.host_lives_on());
}
