#include "tests/unit/sdk/sample.hpp"

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include "host/base/errors.hpp"

namespace flutebook::sdk_test {

plant::Plant sample_plant() {
    plant::Plant plant = fixture::small_plant();
    plant.folder = FLUTEBOOK_SAMPLE_PLANT;
    return plant;
}

engine::Engine open(const plant::Plant& plant) {
    return engine::Engine::start(plant, fixture::built_plugins());
}

plant::GivenSetting written(const std::string& name, const std::string& text, int line, const std::string& file) {
    const base::Place place{file, line, 20};
    return {name, {file, line, 9}, fields::GivenText{text, false, place}, place};
}

plant::GivenSetting written_table(const std::string& name, const std::vector<std::pair<std::string, std::string>>& rows,
                                  int line) {
    const std::string file = "plugins.yaml";
    plant::GivenSetting result{name, {file, line, 7}, {}, {file, line, 20}};
    plant::GivenTable table;
    for (const auto& [key, text] : rows) {
        ++line;
        table.push_back({key, {file, line, 9}, fields::GivenText{text, false, {file, line, 20}}});
    }
    result.value = std::move(table);
    return result;
}

std::string& text_of(plant::GivenSetting& setting) {
    return std::get<fields::GivenText>(setting.value).text;
}

std::vector<std::int64_t> costs(const plant::Plant& plant, const orders::Request& request) {
    const engine::Engine engine = open(plant);
    const fixture::RowSource source(plant, engine, request);
    std::vector<std::int64_t> result;
    for (const engine::Outcome& outcome : engine.cost(source.rows(), 1))
        result.push_back(outcome.cost.ten_thousandths());
    return result;
}

std::string refusal(const plant::Plant& plant) {
    try {
        const engine::Engine opened = open(plant);
    } catch (const ModelError& error) {
        return fmt::format("{}", fmt::join(error.lines(), "\n"));
    } catch (const InputError& error) {
        return fmt::format("{}", fmt::join(error.lines(), "\n"));
    }
    return "";
}

std::string refusal(const plant::Plant& plant, const orders::Request& request) {
    const engine::Engine engine = open(plant);
    try {
        const fixture::RowSource source(plant, engine, request);
    } catch (const InputError& error) {
        CHECK(error.whose() == InputError::Whose::request);
        return fmt::format("{}", fmt::join(error.lines(), "\n"));
    }
    return "";
}

}  // namespace flutebook::sdk_test
