#include "tests/system/face.hpp"

#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace flutebook::fixture {

namespace {

namespace fs = std::filesystem;

std::string read(const fs::path& file) {
    std::ostringstream result;
    result << std::ifstream(file).rdbuf();
    return result.str();
}

}  // namespace

std::string demo_plant() {
    return FLUTEBOOK_SOURCE_DIR "/config/demo";
}

std::vector<std::string> all_demo_requests() {
    std::vector<std::string> result;
    for (const auto& entry : fs::directory_iterator(demo_plant() + "/requests"))
        if (entry.path().extension() == ".yaml") result.push_back(entry.path().string());
    std::sort(result.begin(), result.end());
    return result;
}

std::string demo_request(const std::string& number) {
    for (const std::string& file : all_demo_requests())
        if (fs::path(file).filename().string().rfind(number + "-", 0) == 0) return file;
    throw std::runtime_error("no demo request " + number);
}

Ended ask(const std::vector<std::string>& words) {
    Child child{{FLUTEBOOK_PROGRAM}};
    child.words.insert(child.words.end(), words.begin(), words.end());
    return run(child);
}

Ended ask_at(const std::string& plant, const std::vector<std::string>& words) {
    std::vector<std::string> all = {"--plant", plant};
    all.insert(all.end(), words.begin(), words.end());
    return ask(all);
}

Ended quote_demo(const std::vector<std::string>& files, const std::vector<std::string>& options) {
    std::vector<std::string> words = {"quote"};
    words.insert(words.end(), files.begin(), files.end());
    words.insert(words.end(), options.begin(), options.end());
    return ask_at(demo_plant(), words);
}

PlantCopy::PlantCopy() {
    std::string pattern = (fs::temp_directory_path() / "flutebook-plant-XXXXXX").string();
    if (::mkdtemp(pattern.data()) == nullptr) throw std::runtime_error("no folder for a plant");
    folder_ = pattern;
    fs::copy(demo_plant(), folder_, fs::copy_options::recursive);
}

PlantCopy::~PlantCopy() {
    std::error_code ignored;
    fs::remove_all(folder_, ignored);
}

void PlantCopy::replace(const std::string& file, const std::string& from, const std::string& to) {
    std::string text = read(fs::path(folder_) / file);
    const std::size_t at = text.find(from);
    if (at == std::string::npos) throw std::runtime_error(file + " has no `" + from + "`");
    static_cast<void>(write(file, text.replace(at, from.size(), to)));
}

std::string PlantCopy::write(const std::string& file, const std::string& text) {
    const fs::path path = fs::path(folder_) / file;
    std::ofstream out(path);
    out << text;
    if (!out.flush()) throw std::runtime_error(path.string() + " cannot be written");
    return path.string();
}

void PlantCopy::lay_house_rule() const {
    fs::create_directory(fs::path(folder_) / "plugins");
    fs::copy_file(FLUTEBOOK_HOUSERULE, fs::path(folder_) / "plugins" / "houserule.so");
}

void PlantCopy::take_house_rule() {
    lay_house_rule();
    replace("plugins.yaml", "  - run: {}", "  - run: {}\n  - houserule: {}");
    replace("plugins.yaml", "\nplugins:", "\nprefer: {step.run_waste: houserule}\nplugins:");
}

std::string plain_request(const std::string& number, const std::string& quantities) {
    return "request: " + number +
           "\ndate: 2026-10-15\nstyle: \"0201\"\ninside: {length: 400, width: 300, height: 250}\nboard: B-140\n"
           "quantities: [" +
           quantities + "]\nmargin: 0.2\n";
}

}  // namespace flutebook::fixture
