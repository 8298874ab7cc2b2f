// The section that stands first in an answer with other numbers.
#pragma once

#include <vector>

#include "host/reports/building.hpp"
#include "host/what_if_answers/changed_number.hpp"

namespace flutebook::what_if_reports {

inline constexpr const char* changed_numbers_title = "With other numbers";

/// The first few, and how many more there are.
[[nodiscard]] reports::ReportSection changed_numbers_section(
    const std::vector<what_if_answers::ChangedNumber>& changed);

}  // namespace flutebook::what_if_reports
