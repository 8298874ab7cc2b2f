// The demo plant with box styles of one's own.
#pragma once

#include <string>

#include "host/plant/plant.hpp"

namespace flutebook::fixture {

/// The demo plant's files with this text as its styles.yaml; empty: with none. Throws as read_plant does.
[[nodiscard]] plant::Plant demo_plant_with(const std::string& styles_text);

}  // namespace flutebook::fixture
