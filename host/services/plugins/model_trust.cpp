#include "host/services/plugins/model_trust.hpp"

#include <algorithm>

#include "host/installed_set/installed_set.hpp"

namespace flutebook::services {

plant_answers::ModelInUse::Trust trust_of(const contract::Model& model) {
    using Trust = plant_answers::ModelInUse::Trust;
    const auto installed = installed_set::installed_models();
    return std::find(installed.begin(), installed.end(), model.sha256) == installed.end() ? Trust::tried
                                                                                          : Trust::installed;
}

}  // namespace flutebook::services
