// The template is a complete plugin with the name new_model. The author's name replaces it in every text and in the
// names of the files.
#include "host/services/plugins/new_plugin.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <map>
#include <optional>
#include <sstream>
#include <system_error>

#include "host/base/characters.hpp"
#include "host/base/errors.hpp"
#include "host/base/quoted_text.hpp"
#include "host/workplace/workplace.hpp"

namespace flutebook::services {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t longest_name = 40;
constexpr const char* template_name = "new_model";
constexpr const char* template_type = "NewModel";

[[noreturn]] void refuse(const std::string& name, const std::string& what) {
    throw InputError(InputError::Whose::request, {fmt::format("plugin new {}: {}", base::shortened(name), what)});
}

bool is_letter(char c) {
    return c >= 'a' && c <= 'z';
}

// The names of CMake's own targets, which no library may have.
bool is_of_the_build(const std::string& name) {
    static constexpr std::array<const char*, 9> words = {"all",  "clean",   "edit_cache", "help",         "install",
                                                         "test", "package", "preinstall", "rebuild_cache"};
    return std::find(words.begin(), words.end(), name) != words.end();
}

std::optional<std::string> why_no_name(const std::string& name) {
    const auto fits = [](char c) { return is_letter(c) || base::is_digit(c) || c == '_' || c == '-'; };
    if (name.empty() || !is_letter(name[0]) || !std::all_of(name.begin(), name.end(), fits))
        return "not a model's name: expected lower-case letters, digits, `-` and `_`, a letter first";
    if (name.size() > longest_name)
        return fmt::format("not a model's name: found {} letters, expected at most {}", name.size(), longest_name);
    if (is_of_the_build(name)) return "the build tool reserves this word; choose another name";
    if (fs::exists(fs::path(workplace::installed_plugins()) / (name + ".so")))
        return "a model of this name is installed with flutebook; choose another name";
    return std::nullopt;
}

// small_orders becomes SmallOrdersModel, which is no name of the SDK.
std::string type_of(const std::string& name) {
    std::string result;
    bool begins_word = true;
    for (const char c : name) {
        const bool is_joint = c == '_' || c == '-';
        if (!is_joint) result += begins_word && is_letter(c) ? static_cast<char>(c - 'a' + 'A') : c;
        begins_word = is_joint;
    }
    return result + "Model";
}

void replace_all(std::string& text, const std::string& from, const std::string& to) {
    for (std::size_t found = text.find(from); found != std::string::npos; found = text.find(from, found + to.size()))
        text.replace(found, from.size(), to);
}

std::string renamed(std::string text, const std::string& name) {
    replace_all(text, template_name, name);
    replace_all(text, template_type, type_of(name));
    return text;
}

// Every file of the template with the new name, by its path in the folder.
std::map<std::string, std::string> texts(const fs::path& from, const std::string& name) {
    std::map<std::string, std::string> result;
    std::error_code failure;
    for (fs::recursive_directory_iterator entry(from, failure), end; !failure && entry != end;
         entry.increment(failure)) {
        if (!entry->is_regular_file()) continue;
        std::ostringstream copied;
        copied << std::ifstream(entry->path(), std::ios::binary).rdbuf();
        const std::string text = copied.str();
        if (text.empty()) refuse(name, fmt::format("cannot be read: {}", entry->path().string()));
        result[renamed(entry->path().lexically_relative(from).generic_string(), name)] = renamed(text, name);
    }
    if (result.empty())
        refuse(name, fmt::format("the template is missing: nothing in {}; install the SDK beside this program",
                                 from.string()));
    return result;
}

void write(const fs::path& file, const std::string& text, const std::string& name) {
    std::error_code failure;
    fs::create_directories(file.parent_path(), failure);
    std::ofstream out(file, std::ios::binary);
    out << text;
    out.close();
    if (!out)
        refuse(name,
               fmt::format("cannot be written: {}; free some space, or work in a folder of yours", file.string()));
}

}  // namespace

plant_answers::NewPlugin new_plugin(const std::string& name) {
    if (const auto why = why_no_name(name)) refuse(name, *why);
    const fs::path prefix = fs::path(workplace::installed_plugins()).parent_path().parent_path().parent_path();
    const auto files = texts(prefix / "share" / "flutebook" / "template", name);
    std::error_code failure;
    if (!fs::create_directory(name, failure)) {
        if (failure && failure != std::errc::file_exists)
            refuse(name,
                   fmt::format("no folder can be created here: {}; work in a folder of yours", failure.message()));
        refuse(name, "a file or folder of this name exists already; choose another name, or move it away");
    }
    try {
        for (const auto& [path, text] : files) write(fs::path(name) / path, text, name);
    } catch (const InputError&) {
        fs::remove_all(name, failure);  // a second error is not reported
        throw;
    }
    plant_answers::NewPlugin result{{}, prefix.string()};
    for (const auto& [path, text] : files) result.files.push_back(path);
    return result;
}

}  // namespace flutebook::services
