// The box styles of a plant: a list that is searched, with a picture of the chosen one; and one style at a size, with
// its drawings and whether it folds.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "host/pages/frame.hpp"
#include "host/plant/plant.hpp"
#include "host/plant_answers/style_answer.hpp"
#include "host/plant_answers/style_check_answer.hpp"

namespace flutebook::pages {

struct FoundStyles {
    const plant::Plant& plant;
    std::string wanted;  // words that were searched for
    plant_answers::StyleListAnswer list;
    std::string chosen;                                // the code; empty where none was found
    std::optional<plant_answers::ShownStyle> picture;  // nothing where the chosen one has none
};

[[nodiscard]] std::string styles_page(const Frame& frame, const FoundStyles& found);

/// What begins the names of the fields of a style's own measures.
inline constexpr const char* measure_prefix = "measure.";

struct StylePage {
    const plant::Plant& plant;
    const box_styles::Style& style;
    std::vector<std::pair<std::string, std::string>> asked;  // the form's fields
    std::optional<plant_answers::ShownStyle> shown;
    std::vector<std::string> complaints;             // why it is not
    std::optional<plant_answers::StyleCheck> check;  // nothing of a style that has nothing to fold
};

[[nodiscard]] std::string style_page(const Frame& frame, const StylePage& page);

}  // namespace flutebook::pages
