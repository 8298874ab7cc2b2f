#include "config/demo/history/documents.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <stdexcept>

#include "host/base/date.hpp"

namespace flutebook::demo {

namespace {

// `letter` begins the refs of a file.
struct Shape {
    File file;
    std::string name, letter;
    std::vector<std::string> header;
};

const Shape& shape_of(File file) {
    static const std::vector<Shape> shapes = {
        {File::paper, "paper", "P", {"ref", "date", "shift", "corrugator", "paper", "kg"}},
        {File::corrugator,
         "corrugator",
         "R",
         {"ref", "date", "shift", "corrugator", "order", "metres", "order_change_metres", "good_sheets"}},
        {File::other_rolls,
         "corrugator-other-rolls",
         "RW",
         {"ref", "date", "shift", "corrugator", "order", "roll_width", "outs", "metres", "order_change_metres",
          "good_sheets"}},
        {File::converters,
         "converters",
         "G",
         {"ref", "date", "shift", "converter", "order", "fed", "setup_sheets", "rejected", "good_boxes"}},
        {File::scrap, "scrap", "S", {"ref", "date", "shift", "centre", "cause", "kg"}},
        {File::bales, "bales", "B", {"ref", "date", "shift", "grade", "kg"}},
        {File::tickets, "tickets", "T", {"ref", "date", "mill", "grade", "sent", "kg", "moisture", "per_tonne"}},
        {File::costs, "costs", "E", {"ref", "date", "centre", "class", "amount"}},
        {File::counts, "counts", "Z", {"ref", "date", "account", "of", "kg", "amount"}},
    };
    return *std::find_if(shapes.begin(), shapes.end(), [&](const Shape& shape) { return shape.file == file; });
}

bool is_decimal(const std::string& field) {
    return std::count(field.begin(), field.end(), '.') == 1 &&
           field.find_first_not_of("0123456789.") == std::string::npos;
}

// The mill's office puts semicolons between fields and commas into numbers.
std::string line_of(File file, const std::vector<std::string>& fields) {
    if (file != File::tickets) return fmt::format("{}\n", fmt::join(fields, ","));
    auto quoted = fields;
    for (auto& field : quoted)
        if (is_decimal(field)) std::replace(field.begin(), field.end(), '.', ',');
    return fmt::format("{}\r\n", fmt::join(quoted, ";"));
}

}  // namespace

std::string written(double number, int decimals) {
    auto text = fmt::format("{:.{}f}", number, decimals);
    if (text.find('.') == std::string::npos) return text;
    text.erase(text.find_last_not_of('0') + 1);
    if (text.ends_with('.')) text.pop_back();
    return text;
}

std::string written(Day day) {
    return base::to_string(std::chrono::year_month_day(day));
}

void Documents::add(File file, Day day, std::vector<std::string> fields, const std::string& note) {
    if (day <= last_day()) rows_[{month_of(day), file}].push_back({day, std::move(fields), note});
}

void save_text(const std::string& file, const std::string& text) {
    std::ofstream stream(file, std::ios::binary);
    stream << text;
    stream.close();
    if (!stream) throw std::runtime_error(file + ": cannot be written");
}

void Documents::save(const std::string& folder) const {
    for (const auto& [key, unordered] : rows_) {
        const auto& [month, file] = key;
        auto rows = unordered;
        std::stable_sort(rows.begin(), rows.end(),
                         [](const Row& left, const Row& right) { return left.day < right.day; });
        const bool has_notes = std::any_of(rows.begin(), rows.end(), [](const Row& row) { return !row.note.empty(); });
        const auto& shape = shape_of(file);
        auto header = shape.header;
        if (has_notes) header.push_back("note");
        std::string text = (file == File::tickets ? "\xEF\xBB\xBF" : "") + line_of(file, header);
        for (std::size_t i = 0; i < rows.size(); ++i) {
            const auto ref = fmt::format("{}-{:02}{:02}-{:03}", shape.letter, static_cast<int>(month.year()) % 100,
                                         static_cast<unsigned>(month.month()), i + 1);
            std::vector<std::string> fields = {ref, written(rows[i].day)};
            fields.insert(fields.end(), rows[i].fields.begin(), rows[i].fields.end());
            if (has_notes) fields.push_back(rows[i].note);
            text += line_of(file, fields);
        }
        const auto place =
            fmt::format("{}/{}-{:02}", folder, static_cast<int>(month.year()), static_cast<unsigned>(month.month()));
        std::filesystem::create_directories(place);
        save_text(fmt::format("{}/{}.csv", place, shape.name), text);
    }
}

}  // namespace flutebook::demo
