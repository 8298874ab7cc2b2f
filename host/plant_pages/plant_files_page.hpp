// The files of the opened plant, and one of them with numbered lines, at each of which a link can point.
#pragma once

#include <string>
#include <vector>

#include "host/pages/frame.hpp"
#include "host/plant_answers/plant_files.hpp"

namespace flutebook::pages {

struct OpenedFiles {
    const plant::Plant& plant;
    std::vector<plant_answers::PlantFile> files;
    std::vector<base::Warning> warnings;  // of what is doubtful in them
};

[[nodiscard]] std::string plant_files_page(const Frame& frame, const OpenedFiles& opened);

[[nodiscard]] std::string plant_file_page(const Frame& frame, const plant_answers::PlantFile& file);

}  // namespace flutebook::pages
