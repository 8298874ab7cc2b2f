// The styles that a plant can be asked for: all of them, and one at a size with its blanks. No model is loaded.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "host/plant/plant.hpp"
#include "host/plant_answers/style_answer.hpp"

namespace flutebook::services {

/// The plant's style by its code. Throws InputError (request) with all codes where it has none such.
[[nodiscard]] const box_styles::Style& style_of(const plant::Plant& plant, const std::string& code);

struct StyleQuestion {
    std::string code;
    std::vector<double> inside_mm;  // length, breadth and, but for a sheet, height
    std::string board;
    std::vector<std::pair<std::string, double>> measures;
};

[[nodiscard]] plant_answers::StyleListAnswer list_styles(const plant::Plant& plant);

/// Those whose code or title holds every word of `wanted`, in letters of either case.
[[nodiscard]] plant_answers::StyleListAnswer found_styles(const plant::Plant& plant, const std::string& wanted);

/// At the first usual size and board that the style can be drawn at; nothing where there is none. Throws InputError
/// (request) where the plant has no such style.
[[nodiscard]] std::optional<plant_answers::ShownStyle> show_style_at_usual_size(const plant::Plant& plant,
                                                                                const std::string& code);

/// Throws InputError (request) where the plant has no such style or board, where the style has no such measure, or
/// where the size leaves no blank.
[[nodiscard]] plant_answers::ShownStyle show_style(const plant::Plant& plant, const StyleQuestion& question);

}  // namespace flutebook::services
