// The usual ranges of the shipped models, held against the demo plant's settings: a number that is ten times off is
// told, one that is meant is not.
#include <fmt/format.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "host/base/errors.hpp"
#include "host/engine/engine.hpp"
#include "host/plant/unusual_numbers.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;
using engine::Engine;

namespace {

const plant::Plant& demo() {
    static const plant::Plant plant = plant::read_plant(FLUTEBOOK_SOURCE_DIR "/config/demo");
    return plant;
}

std::string path_of(const contract::Model& model, const contract::Setting& setting) {
    return fmt::format("plugins.{}.{}", model.id, setting.name);
}

// The demo plant with one number of plugins.yaml written otherwise.
plant::Plant with_setting(const contract::Model& model, const contract::Setting& setting, double number) {
    plant::Plant plant = demo();
    const fields::GivenText given{fmt::format("{:.7f}", number), false, {"plugins.yaml", 1, 1}};
    for (plant::ModelSettings& entry : plant.models) {
        if (entry.id != model.id) continue;
        std::erase_if(entry.settings, [&](const plant::GivenSetting& other) { return other.name == setting.name; });
        entry.settings.push_back({setting.name, given.place, given, given.place});
    }
    return plant;
}

// What the demo plant gives, else the default.
double usual_value(const contract::Model& model, const contract::Setting& setting) {
    for (const plant::ModelSettings& entry : demo().models)
        if (entry.id == model.id)
            if (const plant::GivenSetting* given = entry.find(setting.name))
                return std::stod(std::get<fields::GivenText>(given->value).text);
    return setting.initial.value_or(0);
}

// Whether the number is warned of, or refused for being out of range.
bool is_told(const contract::Model& model, const contract::Setting& setting, double number) {
    const auto is_of_it = [&](const std::string& text) {
        return text.find(path_of(model, setting) + ": ") != std::string::npos;
    };
    try {
        const Engine engine = Engine::start(with_setting(model, setting, number), fixture::built_plugins());
        const auto& unusual = engine.unusual_settings();
        return std::any_of(unusual.begin(), unusual.end(),
                           [&](const contract::UnusualValue& value) { return is_of_it(value.text); });
    } catch (const InputError& error) {
        return std::any_of(error.lines().begin(), error.lines().end(), is_of_it);
    }
}

}  // namespace

TEST_CASE("a setting of a shipped model ten times too large or small gives a warning, and a usual one does not") {
    const Engine engine = Engine::start(demo(), fixture::built_plugins());
    std::size_t tried = 0;
    for (const contract::Model& model : engine.graph().models)
        for (const contract::Setting& setting : model.settings) {
            const bool is_of_plant = setting.varies_by == contract::VariesBy::plant && setting.choices.empty();
            const double value = is_of_plant ? usual_value(model, setting) : 0;
            if (value == 0) continue;
            CAPTURE(path_of(model, setting));
            CHECK_FALSE(is_told(model, setting, value));
            CHECK((is_told(model, setting, value * 10) || is_told(model, setting, value / 10)));
            ++tried;
        }
    CHECK(tried >= 35);
}

TEST_CASE("every setting of a shipped model that is money has a usual range") {
    const Engine engine = Engine::start(demo(), fixture::built_plugins());
    for (const contract::Model& model : engine.graph().models)
        for (const contract::Setting& setting : model.settings) {
            CAPTURE(path_of(model, setting));
            CHECK((setting.usual.has_value() || !setting.unit.starts_with("money")));
        }
}

TEST_CASE("the demo plant has no unusual number") {
    CHECK(plant::unusual_numbers(demo()).empty());
    CHECK(Engine::start(demo(), fixture::built_plugins()).unusual_settings().empty());
}
