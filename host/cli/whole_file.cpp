// A rename gives the finished file its name in one step.
#include "host/cli/whole_file.hpp"

#include <fmt/format.h>

#include <cerrno>
#include <filesystem>
#include <fstream>
#include <system_error>

#include "host/base/errors.hpp"
#include "host/base/quoted_text.hpp"

namespace flutebook::cli {

namespace {

namespace fs = std::filesystem;

[[noreturn]] void refuse(const std::string& name, const std::string& why, const char* remedy = "name another file") {
    throw InputError(InputError::Whose::request,
                     {fmt::format("{}: cannot be written: {}; {}", base::shown(name), why, remedy)});
}

std::string reason() {
    return std::generic_category().message(errno);
}

}  // namespace

bool ends_in(const std::string& name, const std::string& ending) {
    return name.size() > ending.size() && name.compare(name.size() - ending.size(), ending.size(), ending) == 0;
}

WholeFile::WholeFile(std::string name) : name_(std::move(name)), unfinished_(name_ + ".part") {
    const fs::path folder = fs::path(name_).parent_path();
    std::error_code error;
    if (!folder.empty() && !fs::exists(folder, error))
        refuse(name_, "there is no folder " + base::shown(folder.string()), "make it, or name another file");
    if (fs::is_directory(name_, error)) refuse(name_, "it is a folder");
    const std::ofstream stream(unfinished_, std::ios::binary | std::ios::trunc);
    if (!stream.is_open()) refuse(name_, reason());
}

WholeFile::~WholeFile() {
    std::error_code error;
    fs::remove(unfinished_, error);
}

void WholeFile::write(const std::string& text) {
    write_with([&](const std::string& unfinished) {
        std::ofstream stream(unfinished, std::ios::binary | std::ios::trunc);
        stream << text;
        stream.close();
        return stream ? std::string() : reason();
    });
}

void WholeFile::write_with(const std::function<std::string(const std::string&)>& writer) {
    const std::string why = writer(unfinished_);
    if (!why.empty()) refuse(name_, why);
    std::error_code error;
    fs::rename(unfinished_, name_, error);
    if (error) refuse(name_, error.message());
}

}  // namespace flutebook::cli
