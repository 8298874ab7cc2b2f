#include "host/services/plugins/files_not_listed.hpp"

#include <algorithm>
#include <filesystem>

namespace flutebook::services {

namespace {

bool is_listed(const plant::Plant& plant, const std::string& model) {
    return std::any_of(plant.models.begin(), plant.models.end(),
                       [&](const plant::ModelSettings& entry) { return entry.served_by() == model; });
}

}  // namespace

std::vector<std::string> files_not_listed(const plant::Plant& plant) {
    std::vector<std::string> result;
    std::error_code failure;
    for (std::filesystem::directory_iterator entry(std::filesystem::path(plant.folder) / "plugins", failure), end;
         !failure && entry != end; entry.increment(failure)) {
        const std::filesystem::path& file = entry->path();
        if (file.extension() == ".so" && !is_listed(plant, file.stem().string()))
            result.push_back(file.lexically_normal().string());
    }
    std::sort(result.begin(), result.end());
    return result;
}

}  // namespace flutebook::services
