// The files that an opened plant was read from, as they were read, and the documents about them.
//
// All: {"files": [{"file", "lines", "changed"}...], "warnings": [{"at", "text"}...]}; one: {"file", "changed", "lines":
// [TEXT...]}. "changed" says what became of the file since, "changed at 10:41 UTC", and is null of one that is as it
// was read.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "host/base/place.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::plant_answers {

struct PlantFile {
    std::string name;                    // "machines.yaml"
    std::vector<std::string> lines;      // without their ends
    std::optional<std::string> changed;  // what became of it since
};

/// Nothing where the plant was read from no file of this name: no other file is ever looked for.
[[nodiscard]] std::optional<PlantFile> plant_file(const plant::Plant& plant, const std::string& name);

/// By name.
[[nodiscard]] std::vector<PlantFile> plant_files(const plant::Plant& plant);

/// "machines.yaml", of the same file named with the plant's folder; what is no file of the plant, as it is.
[[nodiscard]] std::string name_in_plant(const plant::Plant& plant, const std::string& file);

/// What is doubtful in the files, its places named likewise.
[[nodiscard]] std::vector<base::Warning> warnings_in_plant(const plant::Plant& plant,
                                                           std::vector<base::Warning> warnings);

[[nodiscard]] std::string plant_files_document(const std::vector<PlantFile>& files,
                                               const std::vector<base::Warning>& warnings);
[[nodiscard]] std::string plant_file_document(const PlantFile& file);

}  // namespace flutebook::plant_answers
