#include "host/sandbox/report.hpp"

#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>

namespace flutebook::sandbox {
namespace {

// Beyond what any sentence needs: a child gone wild must not fill our memory.
constexpr std::size_t longest_line = 4000;

}  // namespace

void ChildReport::say(std::string_view word, std::string_view text) const {
    std::string line(word);
    if (!text.empty()) line.append(" ").append(text.substr(0, longest_line - word.size() - 2));
    std::replace_if(
        line.begin(), line.end(), [](char sign) { return static_cast<unsigned char>(sign) < ' '; }, ' ');
    line += '\n';
    std::size_t done = 0;
    while (done < line.size()) {
        const ssize_t more = ::write(descriptor_, line.data() + done, line.size() - done);
        if (more < 0 && errno == EINTR) continue;
        if (more < 0) return;
        done += static_cast<std::size_t>(more);
    }
}

void ChildReport::say_figure(std::string_view name, double value) const {
    say("figure", fmt::format("{} {}", name, value));
}

void Listener::hear(std::string_view bytes) {
    for (const char sign : bytes) {
        if (sign != '\n') {
            if (line_.size() < longest_line) line_ += sign;
            continue;
        }
        const std::size_t word = std::min(line_.find(' '), line_.size());
        take_({line_.substr(0, word), word < line_.size() ? line_.substr(word + 1) : ""});
        line_.clear();
    }
}

}  // namespace flutebook::sandbox
