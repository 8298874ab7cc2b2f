#include "host/plant/machine_list.hpp"

#include <cstddef>

namespace flutebook::plant {

std::size_t machine_count(const Plant& plant) {
    return plant.corrugators.size() + plant.converters.size() + 1;
}

std::size_t machine_index(const Plant& plant, const Corrugator& maker) {
    return maker.is_supplier ? machine_count(plant) + static_cast<std::size_t>(&maker - plant.suppliers.data())
                             : static_cast<std::size_t>(&maker - plant.corrugators.data());
}

const std::string& machine_code(const Plant& plant, std::size_t machine) {
    static const std::string dispatch = "dispatch";
    if (machine >= machine_count(plant)) return plant.suppliers.at(machine - machine_count(plant)).code;
    if (machine < plant.corrugators.size()) return plant.corrugators[machine].code;
    machine -= plant.corrugators.size();
    return machine < plant.converters.size() ? plant.converters[machine].code : dispatch;
}

const base::Places& machine_places(const Plant& plant, std::size_t machine) {
    if (machine >= machine_count(plant)) return plant.suppliers.at(machine - machine_count(plant)).places;
    if (machine < plant.corrugators.size()) return plant.corrugators[machine].places;
    machine -= plant.corrugators.size();
    return machine < plant.converters.size() ? plant.converters[machine].places : plant.dispatch.places;
}

}  // namespace flutebook::plant
