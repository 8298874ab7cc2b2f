#include "tests/plugin_worker/workbench.hpp"

#include <fmt/format.h>

#include "host/plugin_worker/isolation.hpp"
#include "host/quoting/quote.hpp"
#include "tests/support/small_plant.hpp"

namespace flutebook::isolated {

plant::Plant full_plant() {
    plant::Plant result = fixture::small_plant();
    complete(result);
    return result;
}

void complete(plant::Plant& plant) {
    plant.models.push_back(fixture::model_entry("consumables", {{"ink_laydown", "6"},
                                                                {"ink_price", "4.2"},
                                                                {"glue_laydown", "2.5"},
                                                                {"glue_price", "1.35"},
                                                                {"bundle_boxes", "25"},
                                                                {"strap_length", "3.2"},
                                                                {"strap_price", "0.009"}}));
    plant.models.push_back(fixture::model_entry("tooling", {{"plate_price", "560"}, {"rule_price", "11"}}));
    plant.models.push_back(
        fixture::model_entry("delivery", {{"pallet_volume", "1.44"}, {"pallet_price", "7.5"}, {"drop_price", "28"}}));
}

void isolate(plant::Plant& plant, const std::vector<std::string>& models) {
    for (const std::string& model : models) plant.isolated.push_back({model, {"plugins.yaml", 1, 1}});
}

engine::Engine open(const plant::Plant& plant, std::chrono::milliseconds patience) {
    plugin_worker::ProcessLoader isolation(FLUTEBOOK_PROGRAM, patience);
    return engine::Engine::start(plant, FLUTEBOOK_PLUGIN_DIR, nullptr, &isolation);
}

std::string quoted(const plant::Plant& plant, const engine::Engine& engine, const orders::Request& order,
                   unsigned threads) {
    const answers::RequestAnswer answer = quoting::quote(plant, engine, order, {threads, std::nullopt});
    if (answer.model_fault) return *answer.model_fault;
    std::string result;
    for (const auto& quantity : answer.quantities)
        result += quantity.quote ? fmt::format("{} ", quantity.quote->cost.ten_thousandths()) : "fits nowhere ";
    return result;
}

}  // namespace flutebook::isolated
