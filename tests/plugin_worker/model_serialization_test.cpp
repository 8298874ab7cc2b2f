// A description from another process is accepted complete or not at all, and is checked like a plugin's own.
#include <catch2/catch.hpp>

#include "host/base/errors.hpp"
#include "host/plugin_worker/model_serialization.hpp"
#include "tests/plugin_worker/workbench.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;
using plugin_worker::fields_of;
using plugin_worker::model_from;

namespace {

const std::vector<contract::Model>& models() {
    static const engine::Engine engine = isolated::open(isolated::full_plant());
    return engine.graph().models;
}

// Whether these fields, one of which may be damaged, are accepted as a description of the model.
bool is_taken(const contract::Model& model, std::vector<std::string> fields) {
    try {
        return model_from(std::move(fields), model.file, model.id).has_value();
    } catch (const ModelError&) {
        return false;
    }
}

std::string refusal(const contract::Model& sent, const contract::Model& model) {
    try {
        static_cast<void>(model_from(fields_of(sent), model.file, model.id));
    } catch (const ModelError& error) {
        return error.what();
    }
    return "";
}

}  // namespace

TEST_CASE("each of the ten models arrives complete") {
    for (const contract::Model& model : models()) {
        const auto sent = model_from(fields_of(model), model.file, model.id);
        REQUIRE(sent.has_value());
        CHECK(fields_of(*sent) == fields_of(model));
        CHECK(sent->where() == model.where());
    }
}

TEST_CASE("a description with a field too few or too many is refused") {
    const contract::Model& model = models().front();
    const std::vector<std::string> whole = fields_of(model);
    for (std::size_t at = 0; at < whole.size(); ++at) {
        std::vector<std::string> fields = whole;
        fields.erase(fields.begin() + static_cast<std::ptrdiff_t>(at));
        INFO("field " << at);
        CHECK_FALSE(is_taken(model, fields));
        fields = whole;
        fields.insert(fields.begin() + static_cast<std::ptrdiff_t>(at), "4000000000");
        CHECK_FALSE(is_taken(model, fields));
    }
    CHECK_FALSE(is_taken(model, {}));
}

TEST_CASE("a description from another process is checked like a plugin's own data") {
    const contract::Model& model = models().front();
    contract::Model sent = model;
    sent.lines = {{"ink", "kg", "Ink", contract::Axis::order, contract::CostClass::material,
                   contract::Behaviour::per_unit, "money/m2"}};
    CHECK(refusal(sent, model) == model.where() +
                                      ": no money: ink is charged in kg, at a rate in money/m2; give the rate in a "
                                      "unit of the kind of money/kg");
    sent = model;
    sent.id = "another";
    CHECK(refusal(sent, model) == model.where() +
                                      ": wrong id: the file calls itself `another`; name the file after the "
                                      "model's id");
    sent = model;
    sent.title = std::string(500, 'x');
    CHECK(refusal(sent, model) == model.where() + ": long text: title; at most 400 bytes");
}
