#include "host/pages/place_links.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace flutebook::pages {

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

}  // namespace flutebook::pages
