// A file that is written whole or not at all: under another name until it is finished.
#pragma once

#include <functional>
#include <string>

namespace flutebook::cli {

/// Whether a file's name has this ending, and something before it.
[[nodiscard]] bool ends_in(const std::string& name, const std::string& ending);

/// One thread at a time.
class WholeFile {
public:
    /// Opens it at once, so that a file that cannot be written is refused before any work is done: throws InputError
    /// (request).
    explicit WholeFile(std::string name);
    /// What was not finished is taken away.
    ~WholeFile();
    WholeFile(const WholeFile&) = delete;
    WholeFile& operator=(const WholeFile&) = delete;

    [[nodiscard]] const std::string& name() const { return name_; }

    /// Writes over a file of that name. Throws InputError (request) where that fails.
    void write(const std::string& text);

    /// The same by `writer`, which is given the unfinished file's name and answers with what went wrong, or nothing.
    void write_with(const std::function<std::string(const std::string&)>& writer);

private:
    std::string name_, unfinished_;
};

}  // namespace flutebook::cli
