#include "host/charts/lines.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "host/charts/scale.hpp"
#include "host/render/number_text.hpp"
#include "host/render/svg_parts.hpp"

namespace flutebook::charts {

namespace {

using Values = std::vector<std::optional<double>>;

constexpr double lines_width = 560, lines_height = 250;
constexpr double lines_top = 30, lines_bottom = 180, bars_top = 192, bars_bottom = 226;

class LinesDrawing {
public:
    explicit LinesDrawing(const LinesChart& values)
        : values_(values), scale_(least(), greatest(), 4, lines_bottom, lines_top) {
        for (const double tick : scale_.ticks()) left_ = std::max(left_, label_width(tick_text(tick)) + 10);
        for (const std::string* name : {&values.actual_name, &values.expected_name, &values.quantity_name})
            right_ = std::max(right_, strong_width(*name) + 14);
    }

    std::string text() {
        add_grid();
        add_between();
        add_line("line-expected", expected());
        add_line("line-actual", actual());
        add_points();
        add_names();
        return chart(values_.title, lines_width, lines_height, text_);
    }

private:
    [[nodiscard]] Values actual() const {
        Values result;
        for (const auto& point : values_.points) result.push_back(point.actual);
        return result;
    }
    [[nodiscard]] Values expected() const {
        Values result;
        for (const auto& point : values_.points) result.push_back(point.expected);
        return result;
    }
    [[nodiscard]] std::vector<double> known() const {
        std::vector<double> result;
        for (const Values& line : {actual(), expected()})
            for (const auto& value : line)
                if (value) result.push_back(*value);
        if (result.empty()) result.push_back(0);
        return result;
    }
    [[nodiscard]] double least() const {
        const auto all = known();
        return *std::min_element(all.begin(), all.end());
    }
    [[nodiscard]] double greatest() const {
        const auto all = known();
        return *std::max_element(all.begin(), all.end());
    }
    [[nodiscard]] std::string tick_text(double tick) const { return render::number_text(tick, scale_.decimals()); }

    [[nodiscard]] double room() const {
        return (lines_width - left_ - right_) / static_cast<double>(std::max<std::size_t>(values_.points.size(), 1));
    }
    [[nodiscard]] double x(std::size_t i) const { return left_ + room() * (static_cast<double>(i) + 0.5); }
    [[nodiscard]] std::string place(std::size_t i, double value) const {
        return render::svg_number(x(i)) + " " + render::svg_number(scale_.at(value));
    }

    void add_grid() {
        text_ += label("", left_, 12, values_.unit);
        for (const double tick : scale_.ticks()) {
            const double y = scale_.at(tick);
            text_ += path("grid", fmt::format("M{} {}H{}", render::svg_number(left_), render::svg_number(y),
                                              render::svg_number(lines_width - right_)));
            text_ += label("end", left_ - 6, y + 4, tick_text(tick));
        }
        text_ += '\n';
    }

    // Stretches over which the line has values.
    static std::vector<std::pair<std::size_t, std::size_t>> stretches(const Values& line) {
        std::vector<std::pair<std::size_t, std::size_t>> result;
        for (std::size_t i = 0; i < line.size(); ++i) {
            if (!line[i]) continue;
            if (!result.empty() && result.back().second == i)
                result.back().second = i + 1;
            else
                result.emplace_back(i, i + 1);
        }
        return result;
    }

    [[nodiscard]] std::string stretch_path(const Values& line, std::size_t from, std::size_t to) const {
        std::string d;
        for (std::size_t i = from; i < to; ++i) d += (i == from ? "M" : "L") + place(i, *line[i]);
        return d;
    }

    void add_line(const char* classes, const Values& line) {
        for (const auto& [from, to] : stretches(line)) text_ += path(classes, stretch_path(line, from, to)) + "\n";
    }

    // Where something is expected, something was.
    void add_between() {
        const Values over = actual(), under = expected();
        for (const auto& [from, to] : stretches(over)) {
            std::string d = stretch_path(over, from, to);
            for (std::size_t i = to; i > from; --i)
                if (under[i - 1]) d += "L" + place(i - 1, *under[i - 1]);
            text_ += path("excess", d + "Z") + "\n";
        }
    }

    void add_points() {
        double most = 0;
        for (const auto& point : values_.points) most = std::max(most, point.quantity);
        for (std::size_t i = 0; i < values_.points.size(); ++i) {
            const LinesPoint& point = values_.points[i];
            const bool is_last = i + 1 == values_.points.size();
            std::string shapes = rectangle("touch", {x(i) - room() / 2, lines_top, room(), lines_height - lines_top});
            const double tall = most > 0 ? point.quantity / most * (bars_bottom - bars_top) : 0;
            if (tall > 0) shapes += rectangle("quiet-bar", {x(i) - 6, bars_bottom - tall, 12, tall});
            if (point.actual) shapes += circle(is_last ? "dot on" : "dot", x(i), scale_.at(*point.actual), 4);
            shapes += label(is_last ? "mid strong" : "mid", x(i), bars_bottom + 16, fitted_month(point.label));
            text_ += marked(point.mark, shapes);
        }
    }

    [[nodiscard]] std::string fitted_month(const std::string& text) const {
        return label_width(text) <= room() ? text : text.substr(0, 1);
    }

    // At the end of each line, and not upon one another.
    void add_names() {
        if (values_.points.empty()) return;
        const LinesPoint& last = values_.points.back();
        const double at = lines_width - right_ + 6;
        double actual_at = last.actual ? scale_.at(*last.actual) + 4 : lines_top;
        double expected_at = last.expected ? scale_.at(*last.expected) + 4 : lines_top + label_height;
        const double apart = label_height - std::abs(actual_at - expected_at);
        if (apart > 0) (actual_at <= expected_at ? expected_at : actual_at) += apart;
        text_ += label("strong", at, actual_at, values_.actual_name);
        text_ += label("", at, expected_at, values_.expected_name);
        text_ += label("", at, bars_bottom, values_.quantity_name) + "\n";
    }

    const LinesChart& values_;
    Scale scale_;
    double left_ = 0, right_ = 8;
    std::string text_;
};

}  // namespace

std::string lines_chart(const LinesChart& values) {
    return LinesDrawing(values).text();
}

}  // namespace flutebook::charts
