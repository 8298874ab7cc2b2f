// A label that is longer than its dimension is turned, which makes its lane deeper and the scale smaller; this is
// repeated until no label turns. A label turns once, so it ends.
#include "host/render/drawing_layout.hpp"

#include <algorithm>
#include <limits>
#include <numeric>

#include "host/render/text.hpp"

namespace flutebook::render {

namespace {

constexpr double widest_digit = 0.66;              // of the letters' height
constexpr double usual_lane = 20, label_gap = 11;  // of a label that is turned: its lane's depth beyond its length
constexpr double line_gap = 6;                     // from the board, or the lane before, to a lane's line
constexpr double margin = 6;

double total(const std::vector<double>& parts) {
    return std::accumulate(parts.begin(), parts.end(), 0.0);
}

}  // namespace

double letters_width(const std::string& text, double letters) {
    return static_cast<double>(width_of(text)) * letters * widest_digit;
}

DrawingLayout::DrawingLayout(const Drawing& drawing)
    : drawing_(drawing), labels_(drawing.dimensions.size(), LabelPlace::along) {
    for (const DrawnDimension& dimension : drawing.dimensions) {
        Lanes& side = lanes_[std::size_t(dimension.side)];
        side.resize(std::max(side.size(), dimension.lane + 1), usual_lane);
    }
    measure_extent();
    do fit_scale();
    while (turn_long_labels());
    leave_out_crowded_labels();
}

void DrawingLayout::measure_extent() {
    constexpr double far = std::numeric_limits<double>::max();
    least_ = {far, far};
    most_ = {-far, -far};
    for (const DrawnPolygon& polygon : drawing_.polygons)
        for (const DrawnPoint& point : polygon.outline) {
            least_ = {std::min(least_.x_mm, point.x_mm), std::min(least_.y_mm, point.y_mm)};
            most_ = {std::max(most_.x_mm, point.x_mm), std::max(most_.y_mm, point.y_mm)};
        }
}

void DrawingLayout::fit_scale() {
    left_ = margin + total(lanes(DrawnDimension::Side::left));
    top_ = margin + line_height * static_cast<double>(drawing_.arrows.size());
    const double wide_mm = most_.x_mm - least_.x_mm, high_mm = most_.y_mm - least_.y_mm;
    const bool is_half = drawing_.width == Drawing::Width::half;
    const double wide = is_half ? half_picture_width : picture_width;
    const double high = is_half ? most_half_picture_height : most_picture_height;
    scale_ = std::min((wide - left_ - margin) / wide_mm, (high - top_) / high_mm);
    width_ = left_ + wide_mm * scale_ + margin;
    for (const DrawnArrow& arrow : drawing_.arrows)
        width_ = std::max(width_, left_ + line_height + letters_width(arrow.text, text_letters));
    height_ = top_ + high_mm * scale_ + total(lanes(DrawnDimension::Side::below)) + margin;
}

bool DrawingLayout::turn_long_labels() {
    bool has_turned = false;
    for (std::size_t i = 0; i < labels_.size(); ++i) {
        const DrawnDimension& dimension = drawing_.dimensions[i];
        const double wide = letters_width(dimension.text, dimension_letters);
        if (labels_[i] == LabelPlace::across || wide <= length(dimension.to_mm - dimension.from_mm)) continue;
        labels_[i] = LabelPlace::across;
        double& depth = lanes_[std::size_t(dimension.side)][dimension.lane];
        depth = std::max(depth, wide + label_gap);
        has_turned = true;
    }
    return has_turned;
}

void DrawingLayout::leave_out_crowded_labels() {
    std::vector<std::size_t> order(labels_.size());
    std::iota(order.begin(), order.end(), std::size_t(0));
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return drawing_.dimensions[a].from_mm < drawing_.dimensions[b].from_mm;
    });
    std::array<std::vector<double>, 2> ends;  // of the last label, by side and lane
    for (std::size_t side = 0; side < ends.size(); ++side)
        ends[side].assign(lanes_[side].size(), std::numeric_limits<double>::lowest());
    for (const std::size_t i : order) {
        const DrawnDimension& dimension = drawing_.dimensions[i];
        const double half =
            (labels_[i] == LabelPlace::across ? dimension_letters : letters_width(dimension.text, dimension_letters)) /
            2;
        const double middle = length((dimension.from_mm + dimension.to_mm) / 2);
        double& end = ends[std::size_t(dimension.side)][dimension.lane];
        if (middle - half < end)
            labels_[i] = LabelPlace::none;
        else
            end = middle + half;
    }
}

PagePoint DrawingLayout::at(DrawnPoint point) const {
    return {left_ + (point.x_mm - least_.x_mm) * scale_, top_ + (point.y_mm - least_.y_mm) * scale_};
}

double DrawingLayout::lane_line(DrawnDimension::Side side, std::size_t lane) const {
    const Lanes& depths = lanes(side);
    const double nearer = std::accumulate(depths.begin(), depths.begin() + std::ptrdiff_t(lane), 0.0);
    if (side == DrawnDimension::Side::left) return left_ - nearer - line_gap;
    return at(most_).y + nearer + line_gap;
}

}  // namespace flutebook::render
