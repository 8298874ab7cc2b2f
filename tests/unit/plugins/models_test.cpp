// What holds for all ten models together: one order through the whole chain, in any division into blocks.
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include <cmath>
#include <set>

#include "tests/support/model_bench.hpp"
#include "tests/unit/plugins/any_order.hpp"

using namespace flutebook::fixture;

namespace {

// In an order in which each finds what it needs.
const std::vector<std::string> ids{"run",    "scrap",       "paper",   "starch",   "setup",       "running",
                                   "energy", "consumables", "tooling", "delivery", "outside-work"};

const Named& settings_of(const std::string& id) {
    static const std::map<std::string, Named> all{{"scrap", {{"scrap_price", 85}, {"handling", 18}}},
                                                  {"starch",
                                                   {{"starch_price", 0.55},
                                                    {"caustic_price", 0.6},
                                                    {"borax_price", 1.1},
                                                    {"starch_share", 0.955},
                                                    {"caustic_share", 0.025},
                                                    {"borax_share", 0.02}}},
                                                  {"energy", {{"fuel_price", 0.05}, {"power_price", 0.2}}},
                                                  {"consumables",
                                                   {{"coverage", 0.3},
                                                    {"ink_laydown", 5},
                                                    {"ink_price", 4},
                                                    {"glue_laydown", 8},
                                                    {"glue_price", 1.5},
                                                    {"bundle_boxes", 25},
                                                    {"strap_length", 1.8},
                                                    {"strap_price", 0.01}}},
                                                  {"tooling",
                                                   {{"plate_price", 400},
                                                    {"plate_boxes", 20000},
                                                    {"die_board_price", 200},
                                                    {"rule_price", 12},
                                                    {"rule_length", 3},
                                                    {"die_boxes", 50000}}},
                                                  {"delivery",
                                                   {{"pallet_volume", 1.2},
                                                    {"pallet_length", 1200},
                                                    {"pallet_width", 800},
                                                    {"stack_height", 1350},
                                                    {"bundle_boxes", 20},
                                                    {"pallet_price", 9},
                                                    {"distance", 120},
                                                    {"freight_price", 0.15}}},
                                                  {"outside-work", {{"order_price", 120}, {"thousand_price", 4.5}}}};
    static const Named none;
    const auto found = all.find(id);
    return found == all.end() ? none : found->second;
}

const ModelBench& model(const std::string& id) {
    static const std::map<std::string, ModelBench> open = [] {
        std::map<std::string, ModelBench> all;
        for (const std::string& each : ids) all.emplace(each, ModelBench(each));
        return all;
    }();
    return open.at(id);
}

bool same_bits(const BenchResult& left, const BenchResult& right) {
    if (left.provides != right.provides || left.losses != right.losses || left.refused != right.refused) return false;
    for (const auto& [name, line] : left.lines)
        if (line.quantity != right.lines.at(name).quantity || line.rate != right.lines.at(name).rate) return false;
    return true;
}

}  // namespace

TEST_CASE("every model takes any order and leaves nothing unset, infinite or out of its range") {
    REQUIRE(rc::check([] {
        BenchRow order = any_order();
        for (const std::string& id : ids) {
            order.settings = settings_of(id);
            const BenchResult result = model(id).evaluate(order);
            RC_ASSERT(result.refused.empty());
            for (const auto& [name, line] : result.lines)
                for (double quantity : line.quantity)
                    RC_ASSERT((name == "scrap.credit" ? quantity <= 0 : quantity >= 0));
            order = with_provided(order, result);
        }
    }));
}

TEST_CASE("a row comes out with the same bits alone and in a block of many") {
    REQUIRE(rc::check([] {
        std::vector<BenchRow> rows(static_cast<std::size_t>(*rc::gen::inRange(2, 20)), any_order());
        for (BenchRow& row : rows) row.facts.insert_or_assign("order.quantity", *rc::gen::inRange(1, 100000));
        for (const std::string& id : ids) {
            for (BenchRow& row : rows) row.settings = settings_of(id);
            const std::vector<BenchResult> together = model(id).evaluate(rows);
            for (std::size_t r = 0; r < rows.size(); ++r) {
                RC_ASSERT(same_bits(together[r], model(id).evaluate(rows[r])));
                rows[r] = with_provided(rows[r], together[r]);
            }
        }
    }));
}

TEST_CASE("every price twice as high makes every amount twice as high") {
    REQUIRE(rc::check([] {
        BenchRow order = any_order();
        for (const std::string& id : ids) {
            order.settings = settings_of(id);
            const BenchResult result = model(id).evaluate(order);
            BenchRow dear = order;
            for (auto* names : {&dear.facts, &dear.settings})
                for (auto& [name, numbers] : *names) {
                    const bool is_price =
                        name.find("price") != name.npos || name.find("_rate") != name.npos || name == "handling";
                    std::vector<double> values = numbers.all();
                    for (double& value : values) value *= is_price ? 2 : 1;
                    numbers = Numbers(values);
                }
            RC_ASSERT(model(id).evaluate(dear).amount() == 2 * result.amount());
            order = with_provided(order, result);
        }
    }));
}

TEST_CASE("run is the only model that sheds, and no two models provide one name") {
    std::set<std::string> provided;
    for (const std::string& id : ids) {
        const flutebook_model& description = model(id).model();
        CHECK(description.id == id);
        CHECK((description.losses.count > 0) == (id == "run"));
        const auto* names = static_cast<const flutebook_name*>(description.provides.at);
        for (std::uint32_t i = 0; i < description.provides.count; ++i) CHECK(provided.insert(names[i].name).second);
    }
    CHECK(provided == std::set<std::string>{"run.fed", "run.good", "web.length", "web.area", "paper.issued",
                                            "adhesive.dry", "scrap.mass", "run.hours", "delivery.pallets",
                                            "delivery.loads", "delivery.layer_boxes", "delivery.layers",
                                            "plates.invoiced", "die.invoiced"});
}
