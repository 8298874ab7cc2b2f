#include "host/pages/place_links.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "host/pages/field_words.hpp"

namespace flutebook::pages {

namespace {

// Nothing where there is no such line. Lines count from 1.
std::optional<std::string_view> line_of(const plant::FileTexts& files, std::string_view file, int line) {
    const auto found = files.find(std::string(file));
    if (found == files.end()) return std::nullopt;
    std::string_view text = found->second;
    for (; line > 1; --line) {
        const std::size_t end = text.find('\n');
        if (end == std::string_view::npos) return std::nullopt;
        text.remove_prefix(end + 1);
    }
    return text.substr(0, text.find('\n'));
}

}  // namespace

Address plant_file_address(std::string_view name) {
    return Address("/plant").at(name);
}

Address plant_line_address(std::string_view name, int line) {
    return plant_file_address(name).to(fmt::format("L{}", line));
}

std::string place_address(const plant::Plant& plant, std::string_view file, int line) {
    const std::string folder = plant.folder + "/";
    if (file.substr(0, folder.size()) == folder) file.remove_prefix(folder.size());
    const auto found = plant.files.find(std::string(file));
    if (found == plant.files.end() || line < 1) return "";
    const std::string& text = found->second;
    const auto lines = std::count(text.begin(), text.end(), '\n') + (text.empty() || text.back() == '\n' ? 0 : 1);
    return line > lines ? "" : plant_line_address(file, line).text();
}

std::string PlaceLinks::place(std::string_view file, int line) const {
    if (plant_ == nullptr) return "";
    const bool is_as_then = then_ == nullptr || line_of(*then_, file, line) == line_of(plant_->files, file, line);
    return is_as_then ? place_address(*plant_, file, line) : "";
}

std::string PlaceLinks::said(const std::string& text) const {
    return in_field_words(plant_ == nullptr ? text : without_folder_names(text, plant_->folder));
}

Html told(const plant::Plant* plant, const std::string& text) {
    const PlaceLinks links(plant);
    return Html::rendered(render::told_html(text, &links));
}

// With what stands before the folder in the same path: a saved quote names its files from the root on.
std::string without_folder_names(std::string text, const std::string& folder) {
    const std::string before = folder + "/";
    for (std::size_t at = text.find(before); at != std::string::npos; at = text.find(before, at)) {
        const std::size_t space = text.find_last_of(" ;(", at);
        const std::size_t begin = space == std::string::npos ? 0 : space + 1;
        text.erase(begin, at + before.size() - begin);
        at = begin;
    }
    return text;
}

}  // namespace flutebook::pages
