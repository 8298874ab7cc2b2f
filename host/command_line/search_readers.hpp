// Readers of the search options for saved quotes: sizes in mm or in inches, the tolerance of a size, the state of a
// quote.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/command_line/option_readers.hpp"

namespace flutebook::cli {

/// "400x300x250", "400x300", "16x12x10in".
[[nodiscard]] Reader read_searched_size(std::vector<double>& size_mm);

/// "5%", "10", "10mm", "0.5in": a share of each length, or a length.
[[nodiscard]] Reader read_tolerance(double& share, double& mm);

/// won, lost or open.
[[nodiscard]] Reader read_state(std::optional<std::string>& value);

}  // namespace flutebook::cli
