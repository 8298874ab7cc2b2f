// Recovered-paper grades as EN 643 writes them: group, grade and variety, 4.01.00.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace flutebook::production {

/// A digit from 1 to 5, a point, two digits, a point, two digits. The standard is revised now and then, so it is the
/// shape that is asked for, not a list.
[[nodiscard]] bool is_grade(std::string_view code);

struct Grade {
    const char* code;
    const char* name;
};
/// The grades that a box plant has to do with.
[[nodiscard]] const std::vector<Grade>& box_plant_grades();
/// The name of one of these.
[[nodiscard]] std::optional<std::string> grade_name(std::string_view code);

}  // namespace flutebook::production
