// The parts of all charts: marks with a name and a link, labels that fit their space, a hatch for each cause of loss.
// Classes alone give colour, since a page's policy refuses styles in attributes.
#pragma once

#include <string>

namespace flutebook::charts {

/// What a mark stands for, as a sentence with its figure, and where it leads: a whole address, or empty.
struct Mark {
    std::string name, link;
};

struct Box {
    double x, y, width, height;
};

constexpr double label_letters = 11.5, label_height = 15;

/// The widest that a label can be, by the widest font that a bare system has.
[[nodiscard]] double label_width(const std::string& text);
/// The same in bold.
[[nodiscard]] double strong_width(const std::string& text);
/// The text, or its beginning with "...", so that it is no wider than `room`; empty where not even that fits.
[[nodiscard]] std::string fitted(const std::string& text, double room);

/// Shapes of a chart, as markup. `classes` are literals.
[[nodiscard]] std::string rectangle(const char* classes, const Box& box);
[[nodiscard]] std::string path(const char* classes, const std::string& d);
[[nodiscard]] std::string circle(const char* classes, double x, double y, double radius);
[[nodiscard]] std::string label(const char* classes, double x, double y, const std::string& text);

/// A rectangle in the hatch of a cause, with that hatch. `id` is the hatch's own within the page.
[[nodiscard]] std::string hatched(const std::string& cause, const std::string& id, const Box& box);

/// Shapes that belong together, with their name and, where there is one, their link.
[[nodiscard]] std::string marked(const Mark& mark, const std::string& shapes);

/// The whole chart. `shapes` holds marks; `title` is the chart's name.
[[nodiscard]] std::string chart(const std::string& title, double width, double height, const std::string& shapes);

}  // namespace flutebook::charts
