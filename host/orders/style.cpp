// The styles that can be asked for. What makes a style follows from its FEFCO group: a folder-gluer the 02 boxes, a die
// cutter what is cut to a drawing, nothing a plain sheet.
#include "host/orders/style.hpp"

namespace flutebook::orders {

const std::vector<Style>& styles() {
    static const std::vector<Style> all{{"0110", Style::Shape::sheet, std::nullopt},
                                        {"0201", Style::Shape::slotted_box, plant::Converter::Kind::folder_gluer},
                                        {"outline", Style::Shape::outline, plant::Converter::Kind::die_cutter}};
    return all;
}

const Style* find_style(const std::string& code) {
    for (const auto& style : styles())
        if (style.code == code) return &style;
    return nullptr;
}

}  // namespace flutebook::orders
