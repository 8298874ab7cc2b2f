// A file that is written completely or not at all: it has another name until it is finished.
#pragma once

#include <functional>
#include <string>

namespace flutebook::cli {

/// Whether a file's name has this ending, and something before it.
[[nodiscard]] bool ends_in(const std::string& name, const std::string& ending);

/// Not thread-safe.
class WholeFile {
public:
    /// Opens the unfinished file, so that a file that cannot be written is refused before any work is done: throws
    /// InputError (request).
    explicit WholeFile(std::string name);
    /// Removes a file that was not finished.
    ~WholeFile();
    WholeFile(const WholeFile&) = delete;
    WholeFile& operator=(const WholeFile&) = delete;

    [[nodiscard]] const std::string& name() const { return name_; }

    /// Replaces a file of that name. Throws InputError (request) where that fails.
    void write(const std::string& text);

    /// The same by `writer`, which gets the unfinished file's name and returns what went wrong; empty where nothing
    /// did.
    void write_with(const std::function<std::string(const std::string&)>& writer);

private:
    std::string name_, unfinished_;
};

}  // namespace flutebook::cli
