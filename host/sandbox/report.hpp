// What a child tells the process that started it: one line after another through a pipe, written before each step is
// begun, so that the last line says where it died.
#pragma once

#include <functional>
#include <string>
#include <string_view>

namespace flutebook::sandbox {

/// The child's end of the pipe. A line that cannot be written is lost: the parent no longer reads.
class ChildReport {
public:
    explicit ChildReport(int descriptor) : descriptor_(descriptor) {}

    /// `word` and then what belongs to it, which is made one line of.
    void say(std::string_view word, std::string_view text = {}) const;

    /// Something measured; the name is one word.
    void say_figure(std::string_view name, double value) const;

private:
    int descriptor_;
};

/// One line as it was said.
struct ChildMessage {
    std::string word, text;
};

/// Cuts what comes through the pipe into lines.
class Listener {
public:
    explicit Listener(std::function<void(const ChildMessage&)> take) : take_(std::move(take)) {}

    void hear(std::string_view bytes);

private:
    std::function<void(const ChildMessage&)> take_;
    std::string line_;
};

}  // namespace flutebook::sandbox
