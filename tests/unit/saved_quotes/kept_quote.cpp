#include "tests/unit/saved_quotes/kept_quote.hpp"

#include <fstream>
#include <sstream>
#include <stdexcept>

#include "host/plant/plant.hpp"

namespace flutebook::fixture {

std::string demo_folder() {
    return FLUTEBOOK_SOURCE_DIR "/config/demo";
}

std::string text_of(const std::string& file) {
    std::ifstream stream(file, std::ios::binary);
    if (!stream) throw std::runtime_error("no file " + file);
    std::ostringstream result;
    result << stream.rdbuf();
    return result.str();
}

ledger::SavedQuote kept_quote() {
    ledger::SavedQuote result{"Q000001", "R-1001", {}, "somebody", {}};
    result.parts.push_back(
        {"asked.json", R"({"plant": "plant", "request": "plant/R-1001.yaml", "date": "2026-10-15", "explain": null})"});
    result.parts.push_back({"request.yaml", text_of(demo_folder() + "/requests/R-1001-everyday-box.yaml")});
    for (const std::string& name : plant::plant_file_names())
        result.parts.push_back({"plant/" + name, text_of(demo_folder() + "/" + name)});
    return result;
}

std::string& part(ledger::SavedQuote& quote, const std::string& name) {
    for (ledger::QuotePart& part : quote.parts)
        if (part.name == name) return part.content;
    throw std::runtime_error("no part " + name);
}

}  // namespace flutebook::fixture
