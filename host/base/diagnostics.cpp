// Sorts and words error messages. A hostile file may cause tens of thousands; only the first hundred are shown.
#include "host/base/diagnostics.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <string_view>
#include <tuple>

namespace flutebook::base {

namespace {
constexpr std::size_t most_shown = 100;
}

void Diagnostics::add(const Place& place, const std::string& path, const std::string& text) {
    const auto where = place_text(place);
    add_item(place, path.empty() ? where + ": " + text : where + ": " + path + ": " + text, text);
}

void Diagnostics::add_item(const Place& place, const std::string& line, const std::string& text) {
    const auto known = std::find(files_.begin(), files_.end(), place.file);
    const auto file = static_cast<std::size_t>(known - files_.begin());
    if (known == files_.end()) files_.push_back(place.file);
    items_.push_back({file, place, line, text});
}

void Diagnostics::add_all(const Diagnostics& others) {
    for (const auto& item : others.items_) add_item(item.place, item.line, item.text);
}

std::vector<std::string> Diagnostics::lines() const {
    auto sorted = items_;
    std::stable_sort(sorted.begin(), sorted.end(), [](const Item& left, const Item& right) {
        return std::tie(left.file, left.place.line, left.place.column) <
               std::tie(right.file, right.place.line, right.place.column);
    });
    const auto place_of = [](const Item& item) { return std::tie(item.file, item.place.line, item.place.column); };
    std::vector<std::string> lines;
    std::set<std::string_view> told_here;  // of one place; the texts stay in `sorted`
    for (std::size_t i = 0; i < sorted.size(); ++i) {
        if (i > 0 && place_of(sorted[i]) != place_of(sorted[i - 1])) told_here.clear();
        if (told_here.insert(sorted[i].text).second) lines.push_back(sorted[i].line);
    }
    if (lines.size() > most_shown) {
        const auto left_out = lines.size() - most_shown;
        lines.resize(most_shown);
        lines.push_back(fmt::format("{}: {} more errors are not shown", sorted.back().place.file.text(), left_out));
    }
    return lines;
}

void Diagnostics::throw_if_any(InputError::Whose whose) const {
    if (!items_.empty()) throw InputError(whose, lines());
}

}  // namespace flutebook::base
