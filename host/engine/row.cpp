#include "host/engine/row.hpp"

namespace flutebook::engine {

std::size_t machine_index(const Row& row, std::size_t step) {
    const catalogue::Plant& plant = *row.order->plant;
    if (step == 0) return static_cast<std::size_t>(row.candidate->corrugator - plant.corrugators.data());
    const auto& converters = row.candidate->route->converters;
    if (step <= converters.size())
        return plant.corrugators.size() + static_cast<std::size_t>(converters[step - 1] - plant.converters.data());
    return plant.corrugators.size() + plant.converters.size();
}

std::size_t machine_count(const catalogue::Plant& plant) {
    return plant.corrugators.size() + plant.converters.size() + 1;
}

const std::string& machine_code(const catalogue::Plant& plant, std::size_t machine) {
    static const std::string dispatch = "dispatch";
    if (machine < plant.corrugators.size()) return plant.corrugators[machine].code;
    machine -= plant.corrugators.size();
    return machine < plant.converters.size() ? plant.converters[machine].code : dispatch;
}

const catalogue::Places& machine_places(const catalogue::Plant& plant, std::size_t machine) {
    if (machine < plant.corrugators.size()) return plant.corrugators[machine].places;
    machine -= plant.corrugators.size();
    return machine < plant.converters.size() ? plant.converters[machine].places : plant.dispatch.places;
}

}  // namespace flutebook::engine
