#include "tests/unit/sdk/sample.hpp"

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include "host/errors.hpp"

namespace flutebook::sdk_test {

catalogue::Plant sample_plant() {
    catalogue::Plant plant = fixture::small_plant();
    plant.folder = FLUTEBOOK_SAMPLE_PLANT;
    return plant;
}

engine::Engine open(const catalogue::Plant& plant) {
    return engine::Engine::start(plant, fixture::built_plugins());
}

catalogue::Node text_node(const std::string& text, int line) {
    catalogue::Node node;
    node.kind = catalogue::Node::Kind::text;
    node.text = text;
    node.place = {"plugins.yaml", line, 20};
    return node;
}

catalogue::Node table_node(const std::vector<std::pair<std::string, std::string>>& rows, int line,
                           const std::string& file) {
    catalogue::Node node = fixture::empty_map();
    node.place = {file, line, 20};
    for (const auto& [key, text] : rows) {
        ++line;
        catalogue::Node value = text_node(text, line);
        value.place.file = file;
        give(node, key, {file, line, 9}, value);
    }
    return node;
}

void give(catalogue::Node& map, const std::string& key, const catalogue::Place& place, const catalogue::Node& value) {
    map.entries.push_back({key, place, value});
}

std::vector<std::int64_t> costs(const catalogue::Plant& plant, const catalogue::Request& request) {
    const engine::Engine engine = open(plant);
    const fixture::RowSource source(plant, engine, request);
    std::vector<std::int64_t> made;
    for (const engine::Outcome& outcome : engine.cost(source.rows(), 1)) made.push_back(outcome.cost.ten_thousandths());
    return made;
}

std::string refusal(const catalogue::Plant& plant) {
    try {
        const engine::Engine opened = open(plant);
    } catch (const ModelError& error) {
        return fmt::format("{}", fmt::join(error.lines(), "\n"));
    } catch (const InputError& error) {
        return fmt::format("{}", fmt::join(error.lines(), "\n"));
    }
    return "";
}

std::string refusal(const catalogue::Plant& plant, const catalogue::Request& request) {
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
