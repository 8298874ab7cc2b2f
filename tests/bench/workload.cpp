#include "tests/bench/workload.hpp"

#include <algorithm>
#include <filesystem>
#include <stdexcept>

namespace flutebook::bench {
namespace {

// The place of "starch.solids" among the models' settings.
struct Found {
    std::size_t model, setting;
};

Found find_setting(const engine::Graph& graph, const std::string& name) {
    for (std::size_t m = 0; m < graph.models.size(); ++m)
        for (std::size_t s = 0; s < graph.models[m].settings.size(); ++s)
            if (graph.models[m].id + "." + graph.models[m].settings[s].name == name) return {m, s};
    throw std::runtime_error(name + " is no setting of a loaded model");
}

plant::Plant with_isolated(plant::Plant plant, const std::vector<std::string>& models) {
    for (const std::string& model : models) plant.isolated.push_back({model, {}});
    return plant;
}

}  // namespace

Workload::Workload(const std::string& folder, const std::string& plugins)
    : Workload(plant::read_plant(folder), plugins, nullptr) {}

Workload::Workload(const std::string& folder, const std::string& plugins, const std::vector<std::string>& isolated,
                   contract::IsolatedLoader& elsewhere)
    : Workload(with_isolated(plant::read_plant(folder), isolated), plugins, &elsewhere) {}

Workload::Workload(plant::Plant plant, const std::string& plugins, contract::IsolatedLoader* elsewhere)
    : plant_(std::move(plant)), engine_(engine::Engine::start(plant_, plugins, nullptr, elsewhere)) {
    std::vector<std::string> files;
    for (const auto& entry : std::filesystem::directory_iterator(std::filesystem::path(plant_.folder) / "requests"))
        files.push_back(entry.path().string());
    std::sort(files.begin(), files.end());
    for (const std::string& file : files) requests_.push_back(orders::read_request(plant_, file));
    for (const auto& request : requests_)
        layouts_.push_back(std::make_unique<geometry::Layout>(geometry::lay_out(plant_, request)));
}

std::vector<engine::Row> Workload::rows(std::size_t count) {
    orders_.clear();
    std::vector<engine::Row> result;
    result.reserve(count);
    for (double quantity = 250; result.size() < count; quantity += 13)
        for (std::size_t i = 0; i < requests_.size() && result.size() < count; ++i) {
            if (layouts_[i]->candidates.empty()) continue;
            orders_.push_back(
                std::make_unique<engine::Order>(engine_.order(plant_, requests_[i], *layouts_[i], quantity)));
            for (const auto& candidate : layouts_[i]->candidates)
                if (result.size() < count) result.push_back({orders_.back().get(), &candidate});
        }
    return result;
}

double Workload::plant_setting(const std::string& name) const {
    const Found at = find_setting(engine_.graph(), name);
    return engine_.settings()[at.model][at.setting].constant().value();
}

double Workload::request_setting(const engine::Order& order, const std::string& name) const {
    const Found at = find_setting(engine_.graph(), name);
    return order.settings.requested[engine_.settings()[at.model][at.setting].request_index].value();
}

Prices Workload::prices() const {
    const auto of = [&](const char* name) { return plant_setting(name); };
    return {.scrap_price = of("scrap.scrap_price"),
            .handling = of("scrap.handling"),
            .starch_price = of("starch.starch_price"),
            .caustic_price = of("starch.caustic_price"),
            .borax_price = of("starch.borax_price"),
            .starch_share = of("starch.starch_share"),
            .caustic_share = of("starch.caustic_share"),
            .borax_share = of("starch.borax_share"),
            .fuel_price = of("energy.fuel_price"),
            .power_price = of("energy.power_price"),
            .c_fibre = of("energy.c_fibre"),
            .c_water = of("energy.c_water"),
            .t_in = of("energy.t_in"),
            .t_bond = of("energy.t_bond"),
            .solids = of("energy.solids"),
            .evaporated_share = of("energy.evaporated_share"),
            .moisture_drop = of("energy.moisture_drop"),
            .h_evap = of("energy.h_evap"),
            .boiler_efficiency = of("energy.boiler_efficiency"),
            .distribution_efficiency = of("energy.distribution_efficiency"),
            .baler_kwh_per_tonne = of("energy.baler_kwh_per_tonne"),
            .standing_heat = of("energy.standing_heat"),
            .ink_laydown = of("consumables.ink_laydown"),
            .ink_price = of("consumables.ink_price"),
            .glue_laydown = of("consumables.glue_laydown"),
            .glue_price = of("consumables.glue_price"),
            .stitch_spacing = of("consumables.stitch_spacing"),
            .stitch_wire = of("consumables.stitch_wire"),
            .wire_price = of("consumables.wire_price"),
            .tape_price = of("consumables.tape_price"),
            .bundle_boxes = of("consumables.bundle_boxes"),
            .strap_length = of("consumables.strap_length"),
            .strap_price = of("consumables.strap_price"),
            .plate_price = of("tooling.plate_price"),
            .die_board_price = of("tooling.die_board_price"),
            .rule_price = of("tooling.rule_price"),
            .pallet_volume = of("delivery.pallet_volume"),
            .pallet_load = of("delivery.pallet_load"),
            .pallet_price = of("delivery.pallet_price"),
            .freight_price = of("delivery.freight_price"),
            .freight_density = of("delivery.freight_density"),
            .drop_price = of("delivery.drop_price")};
}

Extras Workload::extras_of(const engine::Order& order) const {
    const auto of = [&](const char* name) { return request_setting(order, name); };
    return {.coverage = of("consumables.coverage"),
            .joint = of("consumables.joint"),
            .joint_length = of("consumables.joint_length"),
            .plate_share = of("tooling.plate_share"),
            .plate_boxes = of("tooling.plate_boxes"),
            .rule_length = of("tooling.rule_length"),
            .die_boxes = of("tooling.die_boxes"),
            .distance = of("delivery.distance")};
}

}  // namespace flutebook::bench
