#include "host/handover/texts.hpp"

#include <charconv>
#include <cstddef>
#include <stdexcept>

namespace flutebook::handover {

void fail_to_read() {
    throw std::runtime_error("what was handed over cannot be read");
}

// Each behind its length and a line end.
std::string in_bytes(const std::vector<std::string>& texts) {
    std::string result;
    for (const std::string& text : texts) result += std::to_string(text.size()) + "\n" + text;
    return result;
}

std::vector<std::string> texts_of(std::string_view bytes) {
    std::vector<std::string> result;
    while (!bytes.empty()) {
        std::size_t length = 0;
        const char* const end = bytes.data() + bytes.size();
        const auto read = std::from_chars(bytes.data(), end, length);
        if (read.ec != std::errc() || read.ptr == end || *read.ptr != '\n') fail_to_read();
        bytes.remove_prefix(static_cast<std::size_t>(read.ptr - bytes.data()) + 1);
        if (length > bytes.size()) fail_to_read();
        result.emplace_back(bytes.substr(0, length));
        bytes.remove_prefix(length);
    }
    return result;
}

}  // namespace flutebook::handover
