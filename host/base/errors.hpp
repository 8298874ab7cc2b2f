// What cannot go on, as two exceptions (the ledger has the third). Each carries finished sentences, one a line: `where:
// what is wrong: what was found; what to do`. Caught around one request, row, variant, model or web request, so that
// the others go on, and at last in `main`.
#pragma once

#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace flutebook {

/// A file that a person wrote is not fit: all of its errors at once, in the order of the file.
class InputError : public std::runtime_error {
public:
    /// Whose file it is decides the exit code: a request is refused (1), a plant is not fit to work with (3).
    enum class Whose { request, plant };

    InputError(Whose whose, std::vector<std::string> lines)
        : std::runtime_error(lines.empty() ? "unfit input" : lines.front()), whose_(whose), lines_(std::move(lines)) {}

    [[nodiscard]] Whose whose() const { return whose_; }
    [[nodiscard]] const std::vector<std::string>& lines() const { return lines_; }

private:
    Whose whose_;
    std::vector<std::string> lines_;
};

/// A plugin is not fit, or was at fault while it worked: each line names file, model and cause. Exit code 3.
class ModelError : public std::runtime_error {
public:
    explicit ModelError(std::vector<std::string> lines)
        : std::runtime_error(lines.empty() ? "unfit model" : lines.front()), lines_(std::move(lines)) {}
    explicit ModelError(const std::string& line) : ModelError(std::vector<std::string>{line}) {}

    [[nodiscard]] const std::vector<std::string>& lines() const { return lines_; }

private:
    std::vector<std::string> lines_;
};

}  // namespace flutebook
