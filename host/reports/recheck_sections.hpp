// The parts of a rechecked quote's page, each empty where it has nothing to tell. A part begins with an empty line.
#pragma once

#include <cstddef>
#include <string>

#include "host/services/quoting/recheck.hpp"

namespace flutebook::reports {

/// "+13.64": with the sign that a change has.
[[nodiscard]] std::string signed_text(const std::string& number);

[[nodiscard]] std::string changed_keys_section(const services::Recheck& checked);
[[nodiscard]] std::string changed_plugins_section(const services::Recheck& checked);
/// The plant's name and currency.
[[nodiscard]] std::string changed_heading_section(const services::Recheck& checked);
[[nodiscard]] std::string changed_quantity_section(const services::Recheck& checked, std::size_t quantity);

}  // namespace flutebook::reports
