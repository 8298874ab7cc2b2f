// Models that do not fit together: the sentence names both ends.
#include <algorithm>

#include "tests/bad_plugins/says.hpp"
#include "tests/bad_plugins/trial.hpp"

using namespace flutebook;
using bad::Says;
using bad::says;
using bad::Trial;

namespace {

std::string model(const std::string& way, const std::string& id) {
    return "/" + way + "/plugins/" + id + ".so: model " + id;
}

std::string installed(const std::string& id) {
    return std::string(FLUTEBOOK_PLUGIN_DIR) + "/" + id + ".so: model " + id;
}

}  // namespace

TEST_CASE("a need that nothing provides is refused with the nearest name that is provided") {
    const Trial trial("missing_need", {"missing_need"});
    CHECK_THAT(trial.refusal(), Says({"run.fedd: ", model("missing_need", "missing_need"),
                                      "no fact or loaded model gives it", "did you mean run.fed?"}));
    CHECK(trial.host_lives_on());
}

TEST_CASE("a need whose giver is not loaded is refused") {
    Trial trial("not_there");
    auto& models = trial.plant().models;
    models.erase(std::find_if(models.begin(), models.end(), [](const auto& entry) { return entry.id == "running"; }));
    CHECK_THAT(trial.refusal(), Says({"run.hours: ", installed("energy"), "no fact or loaded model gives it"}));
    CHECK(trial.host_lives_on());
}

TEST_CASE("a plant without a model that lays out the run is refused") {
    Trial trial("not_there");
    trial.plant().models.clear();
    const std::string refusal = trial.refusal();
    for (const char* name : {"run.fed", "run.good", "web.length", "web.area", "paper.issued", "adhesive.dry"})
        CHECK(refusal.find(std::string(name) + ": the host needs it") != std::string::npos);
    CHECK(trial.host_lives_on());
}

TEST_CASE("a name that two models give is refused, naming both") {
    const Trial trial("double_provider", {"double_provider"});
    CHECK_THAT(trial.refusal(), Says({"run.hours: given twice", model("double_provider", "double_provider"),
                                      installed("running"), "prefer: {run.hours: "}));
    CHECK(trial.host_lives_on());
}

TEST_CASE("a model that gives what the host gives is refused unless it is preferred") {
    const Trial trial("gives_a_fact", {"gives_a_fact"});
    CHECK_THAT(trial.refusal(), Says({"box.area: given twice", "by the host", model("gives_a_fact", "gives_a_fact")}));
    CHECK(trial.host_lives_on());
}

TEST_CASE("a name that begins with a reserved word of the host is refused, and the message names the model's author") {
    const Trial trial("takes_the_hosts_word", {"takes_the_hosts_word"});
    CHECK_THAT(trial.refusal(),
               Says({model("takes_the_hosts_word", "takes_the_hosts_word"),
                     "(A. Example, a@example.org): a name reserved for the host: provides step.heat"}));
    CHECK(trial.host_lives_on());
}

TEST_CASE("a run whose layout depends on its own cost is refused") {
    Trial trial("late_run", {"late_run"});
    trial.plant().preferences = {{"step.run_waste", "late_run", {"plugins.yaml", 20, 3}}};
    CHECK_THAT(trial.refusal(), Says({"model run: circle", "through another model, what others charge"}));
    CHECK(trial.host_lives_on());
}

TEST_CASE("a need in a unit of another kind is refused, naming both ends and both units") {
    const Trial trial("unit_clash", {"unit_clash"});
    CHECK_THAT(trial.refusal(), Says({"paper.issued: unit clash", model("unit_clash", "unit_clash") + " takes it in m",
                                      installed("run") + " gives it in kg"}));
    CHECK(trial.host_lives_on());
}

TEST_CASE("a need by another axis is refused, naming both ends and both axes") {
    const Trial trial("axis_clash", {"axis_clash"});
    CHECK_THAT(trial.refusal(),
               Says({"paper.issued: axis clash", model("axis_clash", "axis_clash") + " takes it by order",
                     installed("run") + " gives it by ply"}));
    CHECK(trial.host_lives_on());
}

TEST_CASE("a circle of two models is refused, naming both and what each needs of the other") {
    const Trial trial("circle_of_two", {"hen", "egg"});
    CHECK_THAT(trial.refusal(), Says({"circle: ", model("circle_of_two", "hen") + " needs yard.egg of egg",
                                      model("circle_of_two", "egg") + " needs yard.hen of hen"}));
    CHECK(trial.host_lives_on());
}

TEST_CASE("a model that needs a number that it provides itself is a circle of one") {
    const Trial trial("needs_itself", {"needs_itself"});
    CHECK_THAT(trial.refusal(),
               Says({"circle: ", model("needs_itself", "needs_itself") + " needs own.number of needs_itself"}));
    CHECK(trial.host_lives_on());
}

TEST_CASE("a second model that sheds is refused as a double provider, naming both") {
    const Trial trial("second_shedder", {"second_shedder"});
    CHECK_THAT(trial.refusal(),
               Says({"losses: given twice", model("second_shedder", "second_shedder"), installed("run")}));
    CHECK(trial.host_lives_on());
}

TEST_CASE("losses under a cause that no run has are refused, with the causes there are") {
    const Trial trial("unknown_cause");
    CHECK_THAT(trial.refusal(),
               Says({model("unknown_cause", "run") + ": no cause of a run's losses: found make-ready", "setup"}));
    CHECK(trial.host_lives_on());
}

TEST_CASE("a rule that needs what is made from the fact it replaces is a circle") {
    Trial trial("rule_in_a_circle", {"rule_in_a_circle"});
    trial.plant().preferences = {{"step.run_waste", "rule_in_a_circle", {"plugins.yaml", 20, 3}}};
    CHECK_THAT(trial.refusal(),
               Says({"circle: ", model("rule_in_a_circle", "rule_in_a_circle") + " needs run.fed of run",
                     installed("run") + " needs step.run_waste of rule_in_a_circle"}));
    CHECK(trial.host_lives_on());
}

TEST_CASE("no preference replaces a fact that the layout depends on") {
    Trial trial("gives_a_fact", {"gives_a_fact"});
    trial.plant().preferences = {{"box.area", "gives_a_fact", {"plugins.yaml", 20, 3}}};
    const std::string refusal = trial.refusal();
    CHECK_THAT(refusal.substr(0, refusal.find('\n')),
               Says({"plugins.yaml:20:3: prefer.box.area: ", "a fact that no model may replace"}));
    CHECK(trial.host_lives_on());
}

TEST_CASE("a preference that replaces nothing is refused") {
    Trial trial("not_there");
    trial.plant().preferences = {{"run.hours", "running", {"plugins.yaml", 20, 3}}};
    CHECK_THAT(trial.refusal(), Says({"plugins.yaml:20:3: prefer.run.hours: replaces nothing"}));
    trial.plant().preferences = {{"run.hours", "paper", {"plugins.yaml", 20, 3}}};
    CHECK_THAT(trial.refusal(), Says({"plugins.yaml:20:3: prefer.run.hours: ", "paper does not provide it"}));
    trial.plant().preferences = {{"run.hours", "runing", {"plugins.yaml", 20, 3}}};
    CHECK_THAT(trial.refusal(),
               Says({"plugins.yaml:20:3: prefer.run.hours: ", "no such model is loaded", "did you mean running?"}));
    CHECK(trial.host_lives_on());
}
