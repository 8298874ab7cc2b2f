// A copy of the demo plant with lists beside it.
#pragma once

#include <fstream>
#include <sstream>
#include <string>

#include "tests/system/face.hpp"

namespace flutebook::fixture {

class ListPlant {
public:
    [[nodiscard]] const std::string& folder() const { return plant_.folder(); }

    /// Writes a file beside the plant's own; its path.
    std::string write(const std::string& file, const std::string& text) const {
        std::ofstream(folder() + "/" + file, std::ios::binary) << text;
        return folder() + "/" + file;
    }

    [[nodiscard]] static std::string read(const std::string& file) {
        std::ostringstream result;
        result << std::ifstream(file, std::ios::binary).rdbuf();
        return result.str();
    }

private:
    PlantCopy plant_;
};

}  // namespace flutebook::fixture
