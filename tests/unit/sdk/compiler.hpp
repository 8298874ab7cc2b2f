// A compiler asked about a text: whether it takes it, and what it says. For tests of what must, and must not, compile.
#pragma once

#include <string>
#include <vector>

namespace flutebook::sdk_test {

struct Verdict {
    bool is_taken;
    std::string said;  // errors and warnings, in English
};

class Compiler {
public:
    Compiler(std::string name, std::string program) : name_(std::move(name)), program_(std::move(program)) {}

    [[nodiscard]] const std::string& name() const { return name_; }

    /// Compiles a text, with the SDK's headers in reach and every common warning an error, and keeps nothing.
    /// `options` are passed on as a shell would read them.
    [[nodiscard]] Verdict judge(const std::string& text, const std::string& options) const;

private:
    std::string name_, program_;
};

/// g++ and clang++, that compile C with `-x c` as well.
[[nodiscard]] const std::vector<Compiler>& compilers();

}  // namespace flutebook::sdk_test
