// The models as people read about them.
#pragma once

#include <string>

#include "host/services/workplace.hpp"

namespace flutebook::reports {

/// Id, version, title, file; what each provides, charges and sheds, and which settings it takes. In order of
/// evaluation.
[[nodiscard]] std::string plugin_list_text(const services::Workplace& workplace);

/// For each model what it takes and from whom, what it gives and to whom, with units; then what is replaced.
[[nodiscard]] std::string plugin_graph_text(const services::Workplace& workplace);

}  // namespace flutebook::reports
