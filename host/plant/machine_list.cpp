#include "host/plant/machine_list.hpp"

#include <cstddef>

namespace flutebook::plant {

std::size_t machine_count(const Plant& plant) {
    return plant.corrugators.size() + plant.converters.size() + 1;
}

const std::string& machine_code(const Plant& plant, std::size_t machine) {
    static const std::string dispatch = "dispatch";
    if (machine < plant.corrugators.size()) return plant.corrugators[machine].code;
    machine -= plant.corrugators.size();
    return machine < plant.converters.size() ? plant.converters[machine].code : dispatch;
}

const base::Places& machine_places(const Plant& plant, std::size_t machine) {
    if (machine < plant.corrugators.size()) return plant.corrugators[machine].places;
    machine -= plant.corrugators.size();
    return machine < plant.converters.size() ? plant.converters[machine].places : plant.dispatch.places;
}

}  // namespace flutebook::plant
