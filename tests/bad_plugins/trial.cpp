#include "tests/bad_plugins/trial.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/base/errors.hpp"
#include "host/quoting/quote.hpp"
#include "tests/support/small_plant.hpp"

namespace flutebook::bad {
namespace {

std::vector<orders::Request> orders(const plant::Plant& plant) {
    return {fixture::box_request(plant), fixture::double_wall_request(plant), fixture::sheet_request(plant),
            fixture::outline_request(plant), fixture::long_route_request(plant)};
}

// What an order comes to at each quantity, to the last ten-thousandth, or why it has no quote.
std::string cost(const plant::Plant& plant, const engine::Engine& engine, const orders::Request& order) {
    const answers::RequestAnswer answer = quoting::quote(plant, engine, order, {2, std::nullopt});
    if (answer.model_fault) return *answer.model_fault;
    std::string result;
    for (const auto& quantity : answer.quantities)
        result += quantity.quote ? fmt::format("{} ", quantity.quote->cost.ten_thousandths()) : "fits nowhere ";
    return result;
}

std::vector<std::string> costs(const plant::Plant& plant, const engine::Engine& engine) {
    std::vector<std::string> result;
    for (const orders::Request& order : orders(plant)) result.push_back(cost(plant, engine, order));
    return result;
}

engine::Engine open_good(const plant::Plant& plant) {
    return engine::Engine::start(plant, FLUTEBOOK_PLUGIN_DIR);
}

}  // namespace

Trial::Trial(const std::string& way, const std::vector<std::string>& added)
    : good_(fixture::small_plant()), plant_(good_), costs_(costs(good_, open_good(good_))) {
    plant_.folder = std::string(FLUTEBOOK_BAD_PLUGINS) + "/" + way;
    for (const std::string& id : added) plant_.models.push_back(fixture::model_entry(id));
}

engine::Engine Trial::open() const {
    return engine::Engine::start(plant_, FLUTEBOOK_PLUGIN_DIR);
}

std::string Trial::refusal() const {
    try {
        const engine::Engine opened = open();
    } catch (const ModelError& error) {
        return fmt::format("{}", fmt::join(error.lines(), "\n"));
    } catch (const InputError& error) {
        return fmt::format("{}", fmt::join(error.lines(), "\n"));
    }
    return "";
}

std::string Trial::fault() const {
    const engine::Engine engine = open();
    return quoting::quote(plant_, engine, orders(plant_).front(), {2, std::nullopt}).model_fault.value_or("");
}

bool Trial::others_go_on() const {
    const std::vector<std::string> now = costs(plant_, open());
    return std::equal(now.begin() + 1, now.end(), costs_.begin() + 1, costs_.end());
}

bool Trial::host_lives_on() const {
    return costs(good_, open_good(good_)) == costs_;
}

}  // namespace flutebook::bad
