// Ordering and wording of complaints. A hostile file may earn tens of thousands; people are shown the first hundred.
#include "host/base/diagnostics.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

namespace flutebook::base {

namespace {
constexpr std::size_t most_shown = 100;
}

void Diagnostics::add(const Place& place, const std::string& path, const std::string& text) {
    const auto where = place_text(place);
    add_line(place, path.empty() ? where + ": " + text : where + ": " + path + ": " + text);
}

void Diagnostics::add_line(const Place& place, const std::string& line) {
    const auto known = std::find(files_.begin(), files_.end(), place.file);
    const auto file = static_cast<std::size_t>(known - files_.begin());
    if (known == files_.end()) files_.push_back(place.file);
    items_.push_back({file, place, line});
}

void Diagnostics::add_all(const Diagnostics& others) {
    for (const auto& item : others.items_) add_line(item.place, item.line);
}

void Diagnostics::throw_if_any(InputError::Whose whose) const {
    if (items_.empty()) return;
    auto sorted = items_;
    std::stable_sort(sorted.begin(), sorted.end(), [](const Item& left, const Item& right) {
        return std::tie(left.file, left.place.line, left.place.column) <
               std::tie(right.file, right.place.line, right.place.column);
    });
    std::vector<std::string> lines;
    for (const auto& item : sorted)
        if (lines.empty() || lines.back() != item.line) lines.push_back(item.line);
    if (lines.size() > most_shown) {
        const auto left_out = lines.size() - most_shown;
        lines.resize(most_shown);
        lines.push_back(fmt::format("{}: {} more errors are not shown", sorted.back().place.file, left_out));
    }
    throw InputError(whose, std::move(lines));
}

}  // namespace flutebook::base
