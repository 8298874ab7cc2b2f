// Where the mm of a drawing lie on the page: its scale, and the lanes of its dimensions outside the board.
//
// Letters keep their size whatever the drawing's scale. Widths are reckoned by the widest font that a bare system has,
// so that no label is wider than reckoned.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include "host/render/drawing.hpp"

namespace flutebook::render {

/// Units of the picture: pixels where it is shown at full size.
struct PagePoint {
    double x, y;
};

constexpr double picture_width = 372, most_picture_height = 330;
constexpr double half_picture_width = 178, most_half_picture_height = 200;
constexpr double dimension_letters = 10.5, text_letters = 11.5, line_height = 16;

/// The widest that a text can be.
[[nodiscard]] double letters_width(const std::string& text, double letters);

/// How the text of a dimension stands.
enum class LabelPlace { along, across, none };

class DrawingLayout {
public:
    /// `drawing` must outlive this object. It has a polygon.
    explicit DrawingLayout(const Drawing& drawing);

    [[nodiscard]] PagePoint at(DrawnPoint point) const;
    /// x of the board's left edge.
    [[nodiscard]] double at_left() const { return left_; }
    [[nodiscard]] double length(double mm) const { return mm * scale_; }
    [[nodiscard]] double width() const { return width_; }
    [[nodiscard]] double height() const { return height_; }

    /// By the drawing's dimensions.
    [[nodiscard]] LabelPlace label(std::size_t dimension) const { return labels_[dimension]; }
    /// How far from the picture's edge a lane's line stands: x of a lane at the left, y of one below.
    [[nodiscard]] double lane_line(DrawnDimension::Side side, std::size_t lane) const;

private:
    using Lanes = std::vector<double>;  // how deep each is

    [[nodiscard]] const Lanes& lanes(DrawnDimension::Side side) const { return lanes_[std::size_t(side)]; }
    void measure_extent();
    void fit_scale();
    bool turn_long_labels();
    void leave_out_crowded_labels();

    const Drawing& drawing_;
    DrawnPoint least_{}, most_{};
    std::array<Lanes, 2> lanes_;  // by side
    std::vector<LabelPlace> labels_;
    double scale_ = 1, width_ = 0, height_ = 0, left_ = 0, top_ = 0;
};

}  // namespace flutebook::render
