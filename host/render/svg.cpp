// Every text of a drawing is escaped; everything else is a literal of this file.
#include "host/render/svg.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "host/render/drawing_layout.hpp"
#include "host/render/escaping.hpp"
#include "host/render/svg_parts.hpp"
#include "host/render/svg_style.hpp"
#include "host/render/text.hpp"

namespace flutebook::render {

namespace {

// A mark with its name, if it has one, which a pointer that rests on it shows and a screen reader says.
std::string named_mark(const std::string& tag, const std::string& attributes, const std::string& name) {
    if (name.empty()) return fmt::format("<{} {}/>\n", tag, attributes);
    return fmt::format("<{0} {1}><title>{2}</title></{0}>\n", tag, attributes, svg_text(name));
}

class SvgWriter {
public:
    SvgWriter(const Drawing& drawing, std::string prefix)
        : drawing_(drawing), layout_(drawing), prefix_(std::move(prefix)) {
        for (const DrawnPolygon& polygon : drawing.polygons)
            if (polygon.kind == DrawnPolygon::Kind::lost &&
                std::find(causes_.begin(), causes_.end(), polygon.cause) == causes_.end())
                causes_.push_back(polygon.cause);
    }

    [[nodiscard]] double width() const { return layout_.width(); }
    [[nodiscard]] double height() const { return layout_.height(); }

    std::string marks() {
        write_hatches();
        write_arrows();
        for (const DrawnPolygon& polygon : drawing_.polygons) write_polygon(polygon);
        for (const DrawnLine& line : drawing_.lines) write_line(line);
        for (const DrawnText& text : drawing_.texts) write_text(text);
        for (std::size_t i = 0; i < drawing_.dimensions.size(); ++i) write_dimension(i);
        return std::move(text_);
    }

private:
    [[nodiscard]] std::string hatch_id(const std::string& cause) const {
        const auto at = std::find(causes_.begin(), causes_.end(), cause);
        return fmt::format("{}h{}", prefix_, at - causes_.begin());
    }

    void write_hatches() {
        if (causes_.empty()) return;
        text_ += "<defs>";
        for (const std::string& cause : causes_) text_ += hatch_pattern(cause, hatch_id(cause));
        text_ += "</defs>\n";
    }

    void write_arrows() {
        for (std::size_t i = 0; i < drawing_.arrows.size(); ++i) {
            const DrawnArrow& arrow = drawing_.arrows[i];
            const double y = 8 + line_height * static_cast<double>(i), x = layout_.at_left();
            const char* path = arrow.direction == DrawnArrow::Direction::up_and_down ? "M6-6V6M3-3 6-6 9-3M3 3 6 6 9 3"
                               : arrow.direction == DrawnArrow::Direction::left_and_right
                                   ? "M0 0H12M3-3 0 0 3 3M9-3 12 0 9 3"
                                   : "M0 0H12M9-3 12 0 9 3";
            text_ += named_mark("path",
                                fmt::format(R"_(class="dimension" transform="translate({} {})" d="{}")_", svg_number(x),
                                            svg_number(y), path),
                                arrow.text);
            text_ += fmt::format("<text x=\"{}\" y=\"{}\">{}</text>\n", svg_number(x + line_height), svg_number(y + 4),
                                 svg_text(arrow.text));
        }
    }

    [[nodiscard]] std::string path_of(const std::vector<DrawnPoint>& corners) const {
        std::string result;
        for (const DrawnPoint& corner : corners) {
            const PagePoint point = layout_.at(corner);
            result += fmt::format("{}{} {}", result.empty() ? "M" : "L", svg_number(point.x), svg_number(point.y));
        }
        return result + "Z";
    }

    void write_polygon(const DrawnPolygon& polygon) {
        std::string path = path_of(polygon.outline);
        for (const auto& hole : polygon.holes) path += path_of(hole);
        const std::string d = fmt::format(R"(fill-rule="evenodd" d="{}")", path);
        if (polygon.kind == DrawnPolygon::Kind::lost) {
            text_ += named_mark("path",
                                fmt::format(R"_(class="lost t-{}" fill="url(#{})" {})_", hatch_colour(polygon.cause),
                                            hatch_id(polygon.cause), d),
                                polygon.name);
            return;
        }
        const char* kind = polygon.kind == DrawnPolygon::Kind::joined ? "joined" : "board";
        text_ += named_mark("path", fmt::format(R"(class="{}" {})", kind, d), polygon.name);
        if (polygon.shade > 0)
            text_ += fmt::format("<path class=\"shade\" fill-opacity=\"{}\" {}/>\n", svg_number(polygon.shade), d);
        if (polygon.edge == DrawnPolygon::Edge::drawn) text_ += fmt::format("<path class=\"edge\" {}/>\n", d);
    }

    void write_line(const DrawnLine& line) {
        const char* kind = line.kind == DrawnLine::Kind::cut      ? "cut"
                           : line.kind == DrawnLine::Kind::crease ? "crease"
                                                                  : "slot";
        const PagePoint from = layout_.at(line.from), to = layout_.at(line.to);
        text_ += named_mark("path",
                            fmt::format(R"(class="{}" d="M{} {}L{} {}")", kind, svg_number(from.x), svg_number(from.y),
                                        svg_number(to.x), svg_number(to.y)),
                            line.name);
    }

    void write_text(const DrawnText& text) {
        if (letters_width(text.text, text_letters) > layout_.length(text.room_mm)) return;
        const PagePoint middle = layout_.at(text.middle);
        text_ += fmt::format("<text class=\"mid on-board\" x=\"{}\" y=\"{}\">{}</text>\n", svg_number(middle.x),
                             svg_number(middle.y + 4), svg_text(text.text));
    }

    void write_dimension(std::size_t i) {
        const DrawnDimension& dimension = drawing_.dimensions[i];
        const bool is_below = dimension.side == DrawnDimension::Side::below;
        const double line = layout_.lane_line(dimension.side, dimension.lane);
        const PagePoint low = layout_.at({dimension.from_mm, dimension.from_mm});
        const PagePoint high = layout_.at({dimension.to_mm, dimension.to_mm});
        const double from = is_below ? low.x : low.y, to = is_below ? high.x : high.y;
        const std::string path =
            is_below ? fmt::format("M{0} {2}V{3}M{0} {4}H{1}M{1} {2}V{3}", svg_number(from), svg_number(to),
                                   svg_number(line - 4), svg_number(line + 4), svg_number(line))
                     : fmt::format("M{2} {0}H{3}M{4} {0}V{1}M{2} {1}H{3}", svg_number(from), svg_number(to),
                                   svg_number(line - 4), svg_number(line + 4), svg_number(line));
        text_ += named_mark("path", fmt::format(R"(class="dimension" d="{}")", path), dimension.name);
        write_label(dimension, layout_.label(i), (from + to) / 2, line);
    }

    // Beyond the line, seen from the board.
    void write_label(const DrawnDimension& dimension, LabelPlace place, double middle, double line) {
        if (place == LabelPlace::none) return;
        const bool is_below = dimension.side == DrawnDimension::Side::below;
        const bool is_along = place == LabelPlace::along;
        const double away = is_along ? (is_below ? 12 : -4) : (is_below ? 6 : -6);
        const double x = is_below ? middle : line + away, y = is_below ? line + away : middle;
        // Turned text reads upwards.
        const bool is_upright = is_along == is_below;
        const std::string where =
            is_upright ? fmt::format("x=\"{}\" y=\"{}\"", svg_number(x), svg_number(is_below ? y : y + 4))
                       : fmt::format("transform=\"translate({} {})rotate(-90)\"", svg_number(is_below ? x + 4 : x),
                                     svg_number(y));
        text_ += fmt::format("<text class=\"size {}\" {}>{}</text>\n", is_along ? "mid" : "end", where,
                             svg_text(dimension.text));
    }

    const Drawing& drawing_;
    DrawingLayout layout_;
    std::string prefix_;
    std::vector<std::string> causes_;  // hatched, in the order they appear
    std::string text_;
};

// Title and note above a picture that stands alone.
std::string head_lines(const Drawing& drawing, double& y) {
    const auto columns = static_cast<std::size_t>(picture_width / letters_width("0", text_letters));
    std::string result;
    for (const std::string* text : {&drawing.title, &drawing.note}) {
        if (text->empty()) continue;
        for (const std::string& line : wrapped(cleaned(*text), columns)) {
            result +=
                fmt::format("<text{} x=\"6\" y=\"{}\">{}</text>\n", text == &drawing.title ? " class=\"title\"" : "",
                            svg_number(y + 12), markup_text(line));
            y += line_height;
        }
    }
    return result;
}

std::string svg_open(double width, double height, const std::string& title, const std::string& more) {
    return fmt::format(
        "<svg{} class=\"drawing\" role=\"group\" aria-label=\"{}\" viewBox=\"0 0 {} {}\" width=\"{}\" "
        "height=\"{}\">\n<title>{}</title>\n",
        more, svg_text(title), svg_number(width), svg_number(height), svg_number(width), svg_number(height),
        svg_text(title));
}

}  // namespace

std::string svg_in_page(const Drawing& drawing, const std::string& prefix) {
    SvgWriter writer(drawing, prefix);
    return svg_open(writer.width(), writer.height(), drawing.title, "") + writer.marks() + "</svg>\n";
}

std::string svg_file(const Drawings& drawings) {
    std::string inner, title;
    double y = 6, width = picture_width;
    for (std::size_t i = 0; i < drawings.items.size(); ++i) {
        const Drawing& drawing = drawings.items[i];
        if (title.empty()) title = drawing.title;
        SvgWriter writer(drawing, fmt::format("d{}-", i));
        inner += head_lines(drawing, y);
        inner += fmt::format("<g transform=\"translate(0 {})\">\n{}</g>\n", svg_number(y), writer.marks());
        y += writer.height() + line_height;
        width = std::max(width, writer.width());
    }
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" +
           svg_open(width, y, title, " xmlns=\"http://www.w3.org/2000/svg\"") +
           fmt::format("<style>{}{}{}</style>\n<rect class=\"ground\" width=\"100%\" height=\"100%\"/>\n", colours(),
                       drawing_style(), loss_style()) +
           inner + "</svg>\n";
}

}  // namespace flutebook::render
