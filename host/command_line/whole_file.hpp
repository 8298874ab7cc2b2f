// A file that is written completely or not at all: it has another name until it is finished.
#pragma once

#include <functional>
#include <string>

#include "ledger/store/unfinished_file.hpp"

namespace flutebook::cli {

/// Whether a file's name has this ending, and something before it.
[[nodiscard]] bool ends_in(const std::string& name, const std::string& ending);

/// What becomes of a file that has the name already. Nothing is replaced that nobody asked to replace.
enum class IfThere { refuse, replace };
[[nodiscard]] inline IfThere if_there(bool is_replacing) {
    return is_replacing ? IfThere::replace : IfThere::refuse;
}

/// Not thread-safe.
class WholeFile {
public:
    /// Makes the unfinished file, so that a file that cannot be written is refused before any work is done: throws
    /// InputError (request). It is a new file, NAME.part-PROCESS, whatever lies there, with the rights of the file that
    /// it replaces, if any; it is removed again where it is not finished. What runs that were killed left in that
    /// folder is cleared away, and told on standard error.
    explicit WholeFile(std::string name, IfThere there = IfThere::refuse);

    [[nodiscard]] const std::string& name() const { return name_; }

    /// Gives the file its name. Throws InputError (request) where that fails.
    void write(const std::string& text);

    /// The same by `writer`, which gets the unfinished file's name and returns what went wrong; empty where nothing
    /// did.
    void write_with(const std::function<std::string(const std::string&)>& writer);

private:
    std::string name_;
    IfThere there_;
    ledger::UnfinishedFile unfinished_;
};

}  // namespace flutebook::cli
