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

plant::Node text_node(const std::string& text, int line) {
    plant::Node node;
    node.kind = plant::Node::Kind::text;
    node.text = text;
    node.place = {"plugins.yaml", line, 20};
    return node;
}

plant::Node table_node(const std::vector<std::pair<std::string, std::string>>& rows, int line,
                       const std::string& file) {
    plant::Node node = fixture::empty_map();
    node.place = {file, line, 20};
    for (const auto& [key, text] : rows) {
        ++line;
        plant::Node value = text_node(text, line);
        value.place.file = file;
        give(node, key, {file, line, 9}, value);
    }
    return node;
}

void give(plant::Node& map, const std::string& key, const base::Place& place, const plant::Node& value) {
    map.entries.push_back({key, place, value});
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
