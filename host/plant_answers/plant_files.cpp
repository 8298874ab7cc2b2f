#include "host/plant_answers/plant_files.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"

namespace flutebook::plant_answers {

namespace {

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        std::string line = text.substr(at, end - at);
        if (!line.empty() && line.back() == '\r') line.pop_back();
        lines.push_back(std::move(line));
        at = end + 1;
    }
    return lines;
}

answers::Json changed_json(const PlantFile& file) {
    return file.changed ? answers::Json(*file.changed) : answers::Json();
}

}  // namespace

std::optional<PlantFile> plant_file(const plant::Plant& plant, const std::string& name) {
    const auto found = plant.files.find(name);
    if (found == plant.files.end()) return std::nullopt;
    return PlantFile{found->first, lines_of(found->second), std::nullopt};
}

std::vector<PlantFile> plant_files(const plant::Plant& plant) {
    std::vector<PlantFile> result;
    for (const auto& [name, text] : plant.files) result.push_back({name, lines_of(text), std::nullopt});
    return result;
}

std::string name_in_plant(const plant::Plant& plant, const std::string& file) {
    const std::string folder = plant.folder + "/";
    return file.rfind(folder, 0) == 0 ? file.substr(folder.size()) : file;
}

std::vector<base::Warning> warnings_in_plant(const plant::Plant& plant, std::vector<base::Warning> warnings) {
    for (base::Warning& warning : warnings) warning.at = name_in_plant(plant, warning.at);
    return warnings;
}

std::string plant_files_document(const std::vector<PlantFile>& files, const std::vector<base::Warning>& warnings) {
    answers::Json list = answers::Json::array(), doubts = answers::Json::array();
    for (const PlantFile& file : files)
        list.push_back({{"file", file.name}, {"lines", file.lines.size()}, {"changed", changed_json(file)}});
    for (const base::Warning& warning : warnings) doubts.push_back({{"at", warning.at}, {"text", warning.text}});
    return answers::document_text("plant-files", {{"files", list}, {"warnings", doubts}});
}

std::string plant_file_document(const PlantFile& file) {
    return answers::document_text("plant-file",
                                  {{"file", file.name}, {"changed", changed_json(file)}, {"lines", file.lines}});
}

}  // namespace flutebook::plant_answers
