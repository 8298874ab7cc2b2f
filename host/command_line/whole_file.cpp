// Renames the finished file, which is one atomic step.
#include "host/command_line/whole_file.hpp"

#include <fmt/format.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <filesystem>
#include <fstream>
#include <string_view>
#include <system_error>
#include <vector>

#include "host/base/errors.hpp"
#include "host/base/quoted_text.hpp"
#include "host/command_line/output.hpp"

namespace flutebook::cli {

namespace {

namespace fs = std::filesystem;

[[noreturn]] void refuse(const std::string& name, const std::string& why, const char* remedy = "name another file") {
    throw InputError(InputError::Whose::request,
                     {fmt::format("{}: cannot be written: {}; {}", base::shown(name), why, remedy)});
}

std::string reason(int error) {
    return std::generic_category().message(error);
}

// The name, where a file may have it.
std::string free_name(std::string name, IfThere there) {
    const fs::path folder = fs::path(name).parent_path();
    std::error_code error;
    if (!folder.empty() && !fs::exists(folder, error))
        refuse(name, "there is no folder " + base::shown(folder.string()), "make it, or name another file");
    const fs::file_status found = fs::symlink_status(name, error);
    if (!fs::exists(found)) return name;
    if (fs::is_directory(name, error)) refuse(name, "it is a folder");
    if (there == IfThere::refuse) refuse(name, "it is there already", "name another file, or replace it by --replace");
    if (!fs::is_regular_file(found)) refuse(name, "it is no plain file");
    return name;
}

constexpr int most_names = 100;

// What reports begin with: as a page, a workbook, values for a spreadsheet, a list with its prices.
bool is_report(int descriptor) {
    std::array<char, 2048> bytes{};
    const ssize_t length = pread(descriptor, bytes.data(), bytes.size(), 0);
    const std::string_view text(bytes.data(), length > 0 ? static_cast<std::size_t>(length) : 0);
    const auto begins_with = [&](std::string_view start) { return text.substr(0, start.size()) == start; };
    return begins_with("<!doctype html>\n<html lang=\"en\">") || begins_with("PK\x03\x04") ||
           text.substr(0, 80).find("\"table\",\"row\",\"column\",\"value\"") != std::string_view::npos ||
           text.substr(0, text.find('\n')).find("\"new_price\"") != std::string_view::npos;
}

void clear_unfinished_reports(const std::string& name) {
    std::vector<std::string> lines;
    for (const std::string& cleared : ledger::clear_left_overs(name, is_report))
        lines.push_back(cleared + ": was left by an interrupted run, and is removed");
    complain(lines);
}

}  // namespace

bool ends_in(const std::string& name, const std::string& ending) {
    return name.size() > ending.size() && name.compare(name.size() - ending.size(), ending.size(), ending) == 0;
}

WholeFile::WholeFile(std::string name, IfThere there)
    : name_(free_name(std::move(name), there)),
      there_(there),
      unfinished_(name_, there == IfThere::replace ? name_ : std::string(), most_names) {
    if (unfinished_.error() == EEXIST)
        refuse(name_, "files with its temporary name are in the way", "remove them, or name another file");
    if (unfinished_.error() != 0) refuse(name_, reason(unfinished_.error()));
    clear_unfinished_reports(name_);
}

void WholeFile::write(const std::string& text) {
    write_with([&](const std::string& unfinished) {
        std::ofstream stream(unfinished, std::ios::binary | std::ios::trunc);
        stream << text;
        stream.close();
        return stream ? std::string() : reason(errno);
    });
}

void WholeFile::write_with(const std::function<std::string(const std::string&)>& writer) {
    const std::string why = writer(unfinished_.name());
    if (!why.empty()) refuse(name_, why);
    // Where nothing may be replaced, the name may have been taken while the answer was worked out.
    using IfNamed = ledger::UnfinishedFile::IfNamed;
    const int error = unfinished_.give_name(there_ == IfThere::replace ? IfNamed::replace : IfNamed::refuse);
    if (error != 0) refuse(name_, reason(error));
}

}  // namespace flutebook::cli
