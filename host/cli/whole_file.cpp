// A rename gives the finished file its name in one step.
#include "host/cli/whole_file.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
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

void expect_free(const std::string& name, IfThere there) {
    const fs::path folder = fs::path(name).parent_path();
    std::error_code error;
    if (!folder.empty() && !fs::exists(folder, error))
        refuse(name, "there is no folder " + base::shown(folder.string()), "make it, or name another file");
    const fs::file_status found = fs::symlink_status(name, error);
    if (!fs::exists(found)) return;
    if (fs::is_directory(name, error)) refuse(name, "it is a folder");
    if (there == IfThere::refuse) refuse(name, "it is there already", "name another file, or replace it by --replace");
    if (!fs::is_regular_file(found)) refuse(name, "it is no plain file");
}

// Who could not read the file before cannot read the new one: where its group cannot be kept, it is its owner's alone.
void take_rights_of(const std::string& name, int descriptor) {
    struct stat before {};
    if (stat(name.c_str(), &before) != 0) return;
    const bool has_group = fchown(descriptor, static_cast<uid_t>(-1), before.st_gid) == 0;
    static_cast<void>(fchmod(descriptor, before.st_mode & (has_group ? 0777U : 0700U)));
}

// A new file, never one that lies there: a link or a FIFO of that name is not followed. Its name.
std::string make_unfinished(const std::string& name, IfThere there) {
    for (int number = 0; number < 100; ++number) {
        const std::string unfinished =
            fmt::format("{}.part-{}{}", name, getpid(), number == 0 ? "" : fmt::format("-{}", number));
        const int descriptor = open(unfinished.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC | O_NOFOLLOW, 0666);
        if (descriptor < 0 && errno == EEXIST) continue;
        if (descriptor < 0) refuse(name, reason());
        if (there == IfThere::replace) take_rights_of(name, descriptor);
        close(descriptor);
        return unfinished;
    }
    refuse(name, "files of the name that it has until it is finished are in the way",
           "remove them, or name another file");
}

}  // namespace

bool ends_in(const std::string& name, const std::string& ending) {
    return name.size() > ending.size() && name.compare(name.size() - ending.size(), ending.size(), ending) == 0;
}

WholeFile::WholeFile(std::string name, IfThere there) : name_(std::move(name)), there_(there) {
    expect_free(name_, there_);
    unfinished_ = make_unfinished(name_, there_);
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
    give_name();
}

// Where nothing may be replaced, the name may have been taken while the answer was worked out.
void WholeFile::give_name() {
    const bool is_named =
        there_ == IfThere::replace
            ? rename(unfinished_.c_str(), name_.c_str()) == 0
            : renameat2(AT_FDCWD, unfinished_.c_str(), AT_FDCWD, name_.c_str(), RENAME_NOREPLACE) == 0 ||
                  (errno != EEXIST && link(unfinished_.c_str(), name_.c_str()) == 0);
    if (!is_named) refuse(name_, reason());
}

}  // namespace flutebook::cli
