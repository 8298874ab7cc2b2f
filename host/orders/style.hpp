// The box styles that can be asked for, by FEFCO code, and what makes each.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/plant/plant.hpp"

namespace flutebook::orders {

struct Style {
    enum class Shape { sheet, slotted_box, outline };
    std::string code;
    Shape shape;
    std::optional<plant::Converter::Kind> made_by;  // nothing: the corrugator alone makes it
};

/// Every style, in the order they are listed to people.
[[nodiscard]] const std::vector<Style>& styles();
[[nodiscard]] const Style* find_style(const std::string& code);

}  // namespace flutebook::orders
