// Texts instead of a folder.
#include "tests/unit/services/demo_styles.hpp"

#include <fstream>
#include <sstream>

namespace flutebook::fixture {

plant::Plant demo_plant_with(const std::string& styles_text) {
    plant::FileTexts texts;
    for (const std::string& name : plant::plant_file_names()) {
        std::ifstream file(std::string(FLUTEBOOK_SOURCE_DIR) + "/config/demo/" + name);
        std::ostringstream text;
        text << file.rdbuf();
        texts[name] = text.str();
    }
    if (!styles_text.empty()) texts[plant::styles_file_name] = styles_text;
    return plant::read_plant("demo", texts);
}

}  // namespace flutebook::fixture
