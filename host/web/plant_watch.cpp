#include "host/web/plant_watch.hpp"

#include <fmt/chrono.h>
#include <fmt/format.h>
#include <sys/stat.h>

#include <fstream>
#include <optional>
#include <set>
#include <sstream>

#include "host/plant/plant_files.hpp"

namespace flutebook::web {

namespace {

std::optional<std::string> text_of(const std::string& file) {
    std::ifstream stream(file, std::ios::binary);
    if (!stream) return std::nullopt;
    std::ostringstream text;
    text << stream.rdbuf();
    std::string result = text.str();
    if (result.rfind("\xef\xbb\xbf", 0) == 0) result.erase(0, 3);
    return result;
}

std::string changed_at(const std::string& file) {
    struct stat found {};
    if (::stat(file.c_str(), &found) != 0) return "is no longer there";
    return fmt::format("changed at {:%H:%M} UTC", fmt::gmtime(found.st_mtime));
}

}  // namespace

std::vector<pages::Notice> PlantWatch::notices() {
    std::vector<pages::Notice> result = refusals();
    for (const auto& [name, what] : changes())
        result.push_back(
            {fmt::format("{} {}: this server works with the file as it was; reload the plant to take the new one", name,
                         what),
             pages::Notice::Kind::plant});
    return result;
}

std::map<std::string, std::string> PlantWatch::changes() {
    const std::lock_guard lock(mutex_);
    const auto now = std::chrono::steady_clock::now();
    if (has_looked_ && now - looked_ < std::chrono::seconds(1)) return changes_;
    has_looked_ = true;
    looked_ = now;
    changes_.clear();
    std::set<std::string> names = {plant::styles_file_name};
    for (const std::string& name : plant::plant_file_names()) names.insert(name);
    for (const std::string& name : names) {
        const std::string file = plant_.folder + "/" + name;
        const auto kept = plant_.files.find(name);
        const auto found = text_of(file);
        const bool is_same = kept == plant_.files.end() ? !found : found && *found == kept->second;
        if (!is_same) changes_.emplace(name, changed_at(file));
    }
    return changes_;
}

void PlantWatch::refuse(const std::vector<std::string>& lines) {
    const std::lock_guard lock(mutex_);
    refusals_.clear();
    for (const std::string& line : lines) refusals_.push_back({"reload: refused: " + line, pages::Notice::Kind::plant});
}

std::vector<pages::Notice> PlantWatch::refusals() {
    const std::lock_guard lock(mutex_);
    return refusals_;
}

}  // namespace flutebook::web
