// How a loaded model came to be trusted.
#pragma once

#include "host/contract/model.hpp"
#include "host/plant_answers/model_in_use.hpp"

namespace flutebook::services {

/// A model that is loaded has passed every rule: when this program was built, or on this machine.
[[nodiscard]] plant_answers::ModelInUse::Trust trust_of(const contract::Model& model);

}  // namespace flutebook::services
