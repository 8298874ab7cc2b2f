// Scrap that was weighed where it fell, baled, and sent to a mill: its grade as EN 643 writes it (group, grade and
// variety, 4.01.00), and what a mill pays for when a load is wetter than its contract allows.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "host/plant/plant.hpp"

namespace flutebook::production {

/// Whether runs tell what was lost by this cause; every other one is weighed.
[[nodiscard]] bool is_of_run(std::string_view cause);
[[nodiscard]] std::span<const std::string_view> causes_of_runs();

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

/// The mass that is paid, kg, of a load of `kg` at `moisture` (a share of its mass). Above the mill's limit m0,
/// `dry-matter` pays kg (1 - m) / (1 - m0): the dry matter at the moisture agreed; `point-for-point` pays
/// kg (1 - (m - m0)). A drier load earns nothing more.
[[nodiscard]] double paid_kg(const plant::Mill& mill, double kg, double moisture);

}  // namespace flutebook::production
