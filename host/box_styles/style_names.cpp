// Every sum of a style is looked at, but what inside and faces come to where the style leaves it out.
#include "host/box_styles/style_names.hpp"

#include <algorithm>
#include <set>

#include "host/fields/sum.hpp"

namespace flutebook::box_styles {

namespace {

class StyleNames {
public:
    void add(const Style& style) {
        for (const auto& ask : style.asks)
            for (const Sum* sum : {&ask.initial, &ask.low, &ask.high}) add(*sum);
        for (const auto& requirement : style.requirements) add(requirement.sum);
        for (const auto& piece : style.pieces) add(piece);
    }

    [[nodiscard]] const std::set<std::string>& all() const { return names_; }

private:
    void add(const Sum& sum) {
        const auto names = fields::names_in_sum(sum.text);
        if (const auto* list = std::get_if<std::vector<std::string>>(&names)) names_.insert(list->begin(), list->end());
    }
    void add(const std::optional<Sum>& sum) {
        if (sum) add(*sum);
    }
    void add(const std::vector<std::array<Sum, 2>>& corners) {
        for (const auto& corner : corners)
            for (const auto& sum : corner) add(sum);
    }

    void add(const StylePiece& piece) {
        for (const auto& sum : piece.let) add(sum.sum);
        for (const auto* list : {&piece.along, &piece.across})
            for (const auto& sum : *list) add(sum);
        for (const auto& cell : piece.cells) add(cell);
        add(piece.slot);
        add(piece.count);
        for (const auto& sum : piece.walls) add(sum);
        const bool has_slot = std::any_of(piece.borders.begin(), piece.borders.end(), [](const StyleBorder& border) {
            return border.kind == StyleBorder::Kind::slot;
        });
        if (has_slot && !piece.slot) names_.insert("slot");
    }

    void add(const StyleCell& cell) {
        add(cell.depth);
        for (const auto& side : {cell.inset, cell.taper})
            for (const auto& sum : side) add(sum);
        add(cell.shape);
        for (const auto& hole : cell.holes) {
            add(hole.count);
            add(hole.corners);
        }
    }

    std::set<std::string> names_;
};

}  // namespace

void note_names(Style& style, const std::vector<std::string>& allowance_names) {
    StyleNames names;
    names.add(style);
    style.uses_height = names.all().contains("H");
    style.uses_allowances = std::any_of(allowance_names.begin(), allowance_names.end(),
                                        [&](const std::string& name) { return names.all().contains(name); });
}

}  // namespace flutebook::box_styles
