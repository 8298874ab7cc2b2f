// What stands behind a charged line, and what becomes of a model that fails while its inputs are moved.
#include "host/explain/trail.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <memory>

#include "host/base/errors.hpp"
#include "host/contract/description.hpp"
#include "host/contract/evaluator.hpp"
#include "host/contract/library.hpp"
#include "tests/support/row_source.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;
using engine::Engine;

namespace {

// Works as its own function does, `good_calls` times; then its process is lost.
class FailsLater : public contract::Evaluator {
public:
    FailsLater(std::uint32_t (*function)(const flutebook_block*), int good_calls)
        : evaluate_(function), good_calls_(good_calls) {}

    std::optional<contract::Failure> evaluate(const flutebook_block& block, contract::RowSpan) override {
        if (good_calls_-- <= 0) return contract::Failure{contract::Failure::Kind::answered, "answered nothing"};
        static_cast<void>(evaluate_(&block));
        return std::nullopt;
    }

private:
    std::uint32_t (*evaluate_)(const flutebook_block*);
    int good_calls_;
};

class FailsLaterLoader : public contract::IsolatedLoader {
public:
    explicit FailsLaterLoader(int good_calls) : good_calls_(good_calls) {}

    contract::Model open(contract::PluginFile file) override {
        contract::Model model = contract::describe(contract::load_plugin(file), file.name(), file.id());
        model.elsewhere = std::make_shared<FailsLater>(model.evaluate, good_calls_);
        return model;
    }

private:
    int good_calls_;
};

std::vector<std::string> names_of(const explain::Trail& trail) {
    std::vector<std::string> result;
    for (const auto& figure : trail.figures) result.push_back(figure.name);
    return result;
}

bool has(const std::vector<std::string>& names, const std::string& name) {
    return std::find(names.begin(), names.end(), name) != names.end();
}

}  // namespace

TEST_CASE("a trail leads from an amount to the settings and facts that move it, and to no others") {
    const plant::Plant plant = fixture::small_plant();
    const Engine engine = Engine::start(plant, fixture::built_plugins());
    const auto request = fixture::box_request(plant);
    const fixture::RowSource source(plant, engine, request);
    const auto trails = explain::explain(engine, source.rows()[0], "starch");
    REQUIRE(trails.size() == 1);
    const auto names = names_of(trails[0]);
    CHECK(has(names, "starch.starch_price"));
    CHECK_FALSE(has(names, "scrap.scrap_price"));
    CHECK_FALSE(has(names, "energy.power_price"));
}

TEST_CASE("following a line changes nothing of what the row costs") {
    const plant::Plant plant = fixture::small_plant();
    const Engine engine = Engine::start(plant, fixture::built_plugins());
    const auto request = fixture::box_request(plant);
    const fixture::RowSource source(plant, engine, request);
    const auto first = explain::explain(engine, source.rows()[0], "paper");
    const auto second = explain::explain(engine, source.rows()[0], "paper");
    REQUIRE(first.size() == second.size());
    for (std::size_t i = 0; i < first.size(); ++i) {
        CHECK(names_of(first[i]) == names_of(second[i]));
        CHECK(first[i].figures[0].value == second[i].figures[0].value);
    }
}

TEST_CASE("a model that fails at a moved input is an error by its name, not a shorter trail") {
    plant::Plant plant = fixture::small_plant();
    plant.isolated.push_back({"starch", {}});
    FailsLaterLoader loader(3);  // the row itself, before and behind; then an input is moved
    const Engine engine = Engine::start(plant, fixture::built_plugins(), nullptr, &loader);
    const auto request = fixture::box_request(plant);
    const fixture::RowSource source(plant, engine, request);
    try {
        static_cast<void>(explain::explain(engine, source.rows()[0], "starch"));
        FAIL("no error");
    } catch (const ModelError& error) {
        CHECK_THAT(error.what(), Catch::Contains("starch") && Catch::Contains("answered nothing"));
    }
}
