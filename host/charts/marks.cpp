#include "host/charts/marks.hpp"

#include <fmt/format.h>

#include <cmath>

#include "host/render/drawing_layout.hpp"
#include "host/render/svg_parts.hpp"
#include "host/render/svg_style.hpp"
#include "host/render/text.hpp"

namespace flutebook::charts {

using render::svg_number;
using render::svg_text;

namespace {

constexpr double strong_letters = 12.8;  // bold is wider by a tenth in every font that was tried

}  // namespace

double label_width(const std::string& text) {
    return render::letters_width(text, label_letters);
}

double strong_width(const std::string& text) {
    return render::letters_width(text, strong_letters);
}

std::string fitted(const std::string& text, double room) {
    const double letters = std::floor(room / render::letters_width("0", strong_letters));
    constexpr double fewest = 4;
    return letters < fewest ? std::string() : render::cut(text, static_cast<std::size_t>(letters));
}

std::string rectangle(const char* classes, const Box& box) {
    return fmt::format(R"(<rect class="{}" x="{}" y="{}" width="{}" height="{}"/>)", classes, svg_number(box.x),
                       svg_number(box.y), svg_number(box.width), svg_number(box.height));
}

std::string path(const char* classes, const std::string& d) {
    return fmt::format(R"(<path class="{}" d="{}"/>)", classes, d);
}

std::string circle(const char* classes, double x, double y, double radius) {
    return fmt::format(R"(<circle class="{}" cx="{}" cy="{}" r="{}"/>)", classes, svg_number(x), svg_number(y),
                       svg_number(radius));
}

std::string label(const char* classes, double x, double y, const std::string& text) {
    if (text.empty()) return {};
    return fmt::format(R"(<text class="{}" x="{}" y="{}">{}</text>)", classes, svg_number(x), svg_number(y),
                       svg_text(text));
}

std::string hatched(const std::string& cause, const std::string& id, const Box& box) {
    return fmt::format(
        R"_(<defs>{}</defs><rect class="lost t-{}" fill="url(#{})" x="{}" y="{}" width="{}" height="{}"/>)_",
        render::hatch_pattern(cause, id), render::hatch_colour(cause), id, svg_number(box.x), svg_number(box.y),
        svg_number(box.width), svg_number(box.height));
}

std::string marked(const Mark& mark, const std::string& shapes) {
    const std::string name = svg_text(mark.name);
    if (mark.link.empty()) return fmt::format("<g role=\"img\"><title>{}</title>{}</g>\n", name, shapes);
    return fmt::format("<a href=\"{}\"><title>{}</title>{}</a>\n", svg_text(mark.link), name, shapes);
}

std::string chart(const std::string& title, double width, double height, const std::string& shapes) {
    return fmt::format(
        "<svg class=\"drawing chart\" role=\"group\" aria-label=\"{}\" viewBox=\"0 0 {} {}\" width=\"{}\" "
        "height=\"{}\">\n{}</svg>\n",
        svg_text(title), svg_number(width), svg_number(height), svg_number(width), svg_number(height), shapes);
}

}  // namespace flutebook::charts
