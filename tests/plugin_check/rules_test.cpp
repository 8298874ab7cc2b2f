// Tests the check: for each rule there is a plugin that breaks this rule and no other, and correct plugins break none.
#include <catch2/catch.hpp>

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "host/plugin_check/trial.hpp"
#include "host/sandbox/build.hpp"
#include "host/sandbox/child.hpp"
#include "tests/plugin_check/running.hpp"

using namespace flutebook;
using namespace flutebook::plugin_check;
using namespace flutebook::sandbox;
using namespace std::chrono_literals;
using check::plugin;
using Names = std::vector<std::string>;

namespace {

constexpr std::size_t few_orders = 200;

// Every plugin, and the one rule that it breaks.
const std::vector<std::pair<std::string, std::string>>& table() {
    static const std::vector<std::pair<std::string, std::string>> all = {
        {"crashes", "conduct.survives"},
        {"exits", "conduct.survives"},
        {"hangs", "conduct.comes-back"},
        {"hungers", "conduct.memory"},
        {"forks", "conduct.alone"},
        {"writes_a_file", "conduct.alone"},
        {"not_a_library", "file.library"},
        {"exports_nothing", "file.exports"},
        {"exports_a_function", "file.exports"},
        {"needs_a_library", "file.libraries"},
        {"shares_a_symbol", "file.symbols"},
        {"runs_on_the_stack", "file.stack"},
        {"calls_nobody", "load.binds"},
        {"rounds_upwards_when_loaded", "load.floating-point"},
        {"changes_signals", "load.signals"},
        {"changes_locale", "load.locale"},
        {"changes_environment", "load.environment"},
        {"changes_folder", "load.folder"},
        {"starts_a_thread", "load.threads"},
        {"leaves_a_file_open", "load.descriptors"},
        {"changes_file_mode", "load.file-mode"},
        {"unknown_unit", "description.reads"},
        {"says_nothing", "description.documented"},
        {"weighs_an_area", "description.known-names"},
        {"gives_a_fact", "description.known-names"},
        {"needs_nobodys_name", "description.known-names"},
        {"sheds_out_of_turn", "description.shedding"},
        {"refuses_for_no_reason", "evaluate.answers"},
        {"writes_to_its_inputs", "evaluate.inputs"},
        {"scales_its_need", "evaluate.inputs"},
        {"scales_its_setting", "evaluate.inputs"},
        {"reads_the_next_step", "evaluate.bounds"},
        {"writes_past_its_columns", "evaluate.bounds"},
        {"one_row_too_many", "evaluate.bounds"},
        {"reads_a_row_too_many", "evaluate.bounds"},
        {"charges_no_number", "evaluate.numbers"},
        {"gives_more_than_promised", "evaluate.ranges"},
        {"rounds_upwards_when_called", "evaluate.floating-point"},
        {"counts_its_calls", "evaluate.repeats"},
        {"charges_by_place", "evaluate.order"},
        {"charges_by_block", "evaluate.blocks"},
        {"charges_by_thread", "evaluate.threads"},
        {"allocates", "evaluate.allocation"},
        {"makes_a_text", "evaluate.allocation"},
        {"looks_at_the_clock", "evaluate.apart"},
        {"choice_out_of_reach", "settings.reading"},
        {"divides_by_a_setting", "settings.ends"},
        {"sheds_too_much", "truth.balance"},
        {"adds_a_recovery", "truth.recovery"},
        {"takes_tonnes_for_kilograms", "truth.rates"},
        {"needs_for_nothing", "truth.use"},
        {"set_for_nothing", "truth.use"},
        {"two_ends_at_once", "fuzz.orders"},
        {"chdirs_while_evaluating", "end.state"},
        {"umasks_while_evaluating", "end.state"},
        {"leaks_a_descriptor", "end.state"},
        {"blocks_signals", "end.state"},
        {"handles_a_signal_later", "end.state"},
    };
    return all;
}

// `silence` is of a child's own time: what others on this machine take of it does not count.
CheckFindings checked(const std::string& file, std::chrono::seconds silence = 3s * slowness) {
    TrialRequest asked = asked_for_check(FLUTEBOOK_PROGRAM, 1, few_orders);
    asked.limits.silence = silence;
    asked.limits.resident_bytes = (std::size_t{256} << 20) + kept_when_freed;
    return try_plugin(contract::PluginFile::read(file), asked);
}

Names broken_by(const CheckFindings& findings) {
    Names result;
    for (const RuleFinding& finding : findings.rules)
        if (finding.state == RuleFinding::State::broken) result.push_back(finding.rule->id + (": it " + finding.text));
    return result;
}

std::string group_of(const std::string& rule) {
    return rule.substr(0, rule.find('.'));
}

void check_group(const std::string& group) {
    for (const auto& [name, rule] : table()) {
        if (group_of(rule) != group) continue;
        INFO(name);
        const bool hangs = rule == "conduct.comes-back";  // spins for as long as it is waited for
        const Names broken = broken_by(checked(plugin(name), (hangs ? 1s : 3s) * slowness));
        CHECK(broken.size() == 1);
        if (!broken.empty()) CHECK_THAT(broken.front(), Catch::StartsWith(rule + ": it "));
    }
}

void check_keeps_all(const std::string& file) {
    INFO(file);
    const CheckFindings findings = checked(file);
    CHECK(broken_by(findings) == Names{});
    CHECK(findings.rules.size() == rules().size());
    for (const RuleFinding& finding : findings.rules) CHECK(finding.state == RuleFinding::State::holds);
    CHECK(findings.figures.size() == 4);
}

RuleFinding finding_of(const CheckFindings& findings, const std::string& rule) {
    const auto found = std::find_if(findings.rules.begin(), findings.rules.end(),
                                    [&](const RuleFinding& rule_finding) { return rule_finding.rule->id == rule; });
    REQUIRE(found != findings.rules.end());
    return *found;
}

}  // namespace

TEST_CASE("there is a plugin for each rule that breaks it") {
    for (const Rule& rule : rules()) {
        INFO(rule.id);
        CHECK(std::any_of(table().begin(), table().end(), [&](const auto& entry) { return entry.second == rule.id; }));
    }
}

TEST_CASE("every rule that another needs is tried before it") {
    Names before;
    for (const Rule& rule : rules()) {
        INFO(rule.id);
        for (const char* needed : rule.needs) CHECK(std::count(before.begin(), before.end(), needed) == 1);
        before.emplace_back(rule.id);
    }
}

TEST_CASE("a plugin that ends its process or affects others breaks that rule only") {
    check_group("conduct");
}
TEST_CASE("a wrong file breaks that rule only") {
    check_group("file");
}
TEST_CASE("a plugin that changes the process when it is loaded breaks that rule only") {
    check_group("load");
}
TEST_CASE("a wrong description breaks that rule only") {
    check_group("description");
}
TEST_CASE("a wrong evaluation breaks that rule only") {
    check_group("evaluate");
}
TEST_CASE("a wrong setting breaks that rule only") {
    check_group("settings");
}
TEST_CASE("a false declaration breaks that rule only") {
    check_group("truth");
}
TEST_CASE("an error with rare settings breaks the rule of many orders only") {
    check_group("fuzz");
}

TEST_CASE("a plugin that leaves the process changed by its calls breaks that rule only") {
    check_group("end");
}

TEST_CASE("a model that reaches beyond its own columns is blamed itself, and the column is named") {
    const auto text = [](const char* name, const char* rule) { return finding_of(checked(plugin(name)), rule).text; };
    CHECK_THAT(text("scales_its_need", "evaluate.inputs"), Catch::StartsWith("wrote to order.quantity, which it may "));
    CHECK_THAT(text("scales_its_setting", "evaluate.inputs"), Catch::StartsWith("wrote to rate, which it may only"));
    CHECK_THAT(text("reads_the_next_step", "evaluate.bounds"),
               Catch::StartsWith("accessed memory past its rows, beside step.run_waste, in a block"));
    CHECK_THAT(text("writes_past_its_columns", "evaluate.bounds"),
               Catch::StartsWith("accessed memory past its rows, beside the quantity of boxes, in a block"));
}

TEST_CASE("a need that nothing provides is named, with the name that was probably meant") {
    CHECK(finding_of(checked(plugin("needs_nobodys_name")), "description.known-names").text ==
          "needs run.fedd, which nobody gives; did you mean run.fed?");
}

TEST_CASE("a correct plugin keeps every rule, also where an input matters seldom") {
    for (const auto* name : {"good", "matters_seldom", "shows_too_much"}) check_keeps_all(plugin(name));
}
TEST_CASE("each of the host's own models keeps every rule") {
    for (const auto* model : {"run", "scrap", "paper", "starch", "setup", "running", "energy", "consumables", "tooling",
                              "delivery", "outside-work"})
        check_keeps_all(std::string(FLUTEBOOK_PLUGIN_DIR) + "/" + model + ".so");
}
TEST_CASE("each of the SDK's examples keeps every rule") {
    for (const auto* example : {"varnish", "tariff", "small_orders", "emissions", "inspection"})
        check_keeps_all(std::string(FLUTEBOOK_EXAMPLE_PLUGINS) + "/" + example + ".so");
}

TEST_CASE("an unused input is named, and one that matters seldom is not") {
    CHECK_THAT(finding_of(checked(plugin("needs_for_nothing")), "truth.use").text,
               Catch::StartsWith("declares and does not use the need box.area: "));
    CHECK_THAT(finding_of(checked(plugin("set_for_nothing")), "truth.use").text,
               Catch::StartsWith("declares and does not use the setting rate: "));
}

TEST_CASE("an allocation in the standard library is found and named") {
    CHECK_THAT(finding_of(checked(plugin("allocates")), "evaluate.allocation").text,
               Catch::StartsWith("called malloc in a block of"));
    CHECK_THAT(finding_of(checked(plugin("makes_a_text")), "evaluate.allocation").text,
               Catch::StartsWith("called operator new in a block of"));
    CHECK_THAT(finding_of(checked(plugin("looks_at_the_clock")), "evaluate.apart").text,
               Catch::StartsWith("called time in a block of"));
}

TEST_CASE("other exported symbols are reported, and break no rule") {
    const RuleFinding finding = finding_of(checked(plugin("shows_too_much")), "file.exports");
    CHECK(finding.state == RuleFinding::State::holds);
    CHECK_THAT(finding.text, Catch::Contains("rate_of_a_box"));
}

TEST_CASE("a fault of many orders is reported with the least number of orders that shows it") {
    const auto tried = [](std::size_t orders) {
        return finding_of(try_plugin(contract::PluginFile::read(plugin("two_ends_at_once")),
                                     asked_for_check(FLUTEBOOK_PROGRAM, 5, orders)),
                          "fuzz.orders");
    };
    const RuleFinding first = tried(few_orders);
    REQUIRE(first.state == RuleFinding::State::broken);
    REQUIRE(first.orders > 1);
    const RuleFinding again = tried(first.orders);
    CHECK(again.state == RuleFinding::State::broken);
    CHECK(again.text == first.text);
    CHECK(tried(first.orders - 1).state == RuleFinding::State::holds);
}

TEST_CASE("every rule is tried before a file is trusted, and a rule that was not tried does not count as passed") {
    const CheckFindings findings =
        try_plugin(contract::PluginFile::read(plugin("good")), asked_for_trust(FLUTEBOOK_PROGRAM));
    CHECK(findings.has_passed());
    CHECK(findings.rules.size() == rules().size());
    const CheckFindings allocates =
        try_plugin(contract::PluginFile::read(plugin("allocates")), asked_for_trust(FLUTEBOOK_PROGRAM));
    CHECK_FALSE(allocates.has_passed());
}
