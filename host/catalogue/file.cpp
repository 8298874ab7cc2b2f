// Reading a file without trust: its kind and size are looked at before its bytes, and its bytes before their meaning.
// Only a plain file is opened: a pipe or a device could be waited for forever.
#include "host/catalogue/file.hpp"

#include <cstddef>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string_view>
#include <system_error>

#include <fmt/format.h>

namespace flutebook::catalogue {

namespace {

// What makes the byte at `at` unfit, and nothing if it is the fit start of a character `length` bytes long.
struct Character {
    std::size_t length;
    const char* fault;
};

std::size_t announced_length(unsigned char first) {
    if (first < 0x80) return 1;
    if (first >= 0xC2 && first <= 0xDF) return 2;
    if (first >= 0xE0 && first <= 0xEF) return 3;
    return first >= 0xF0 && first <= 0xF4 ? 4 : 0;
}

// The second byte shuts out spellings longer than needed, surrogates, and what lies beyond Unicode.
bool second_fits(unsigned char first, unsigned char second) {
    if (first == 0xE0) return second >= 0xA0 && second <= 0xBF;
    if (first == 0xED) return second >= 0x80 && second <= 0x9F;
    if (first == 0xF0) return second >= 0x90 && second <= 0xBF;
    if (first == 0xF4) return second >= 0x80 && second <= 0x8F;
    return second >= 0x80 && second <= 0xBF;
}

Character character_at(std::string_view text, std::size_t at) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const auto first = byte(at);
    if (first == 0) return {1, "a NUL byte in a text file"};
    if ((first < 0x20 && first != '\t' && first != '\n' && first != '\r') || first == 0x7F)
        return {1, "a control character in a text file"};
    const auto length = announced_length(first);
    if (length == 0 || at + length > text.size()) return {1, "not UTF-8 text"};
    for (std::size_t i = 1; i < length; ++i)
        if (i == 1 ? !second_fits(first, byte(at + 1)) : (byte(at + i) & 0xC0U) != 0x80U) return {1, "not UTF-8 text"};
    if (first == 0xC2 && byte(at + 1) < 0xA0) return {2, "a control character in a text file"};
    return {length, nullptr};
}

// Whether the line that starts at `at` has a tab before its first word; a comment and an empty line may.
std::size_t tab_in_indent(std::string_view text, std::size_t at) {
    const auto word = text.find_first_not_of(" \t\r", at);
    if (word == std::string_view::npos || text[word] == '\n' || text[word] == '#') return std::string_view::npos;
    const auto tab = text.find('\t', at);
    return tab < word ? tab : std::string_view::npos;
}

}  // namespace

std::optional<std::string> check_text(std::string text, const std::string& file, Complaints& complaints) {
    if (text.size() > largest_file) {
        complaints.add({file, 0, 0}, "", fmt::format("too large, expected at most {} KB", largest_file / 1024));
        return std::nullopt;
    }
    if (text.starts_with("\xEF\xBB\xBF")) text.erase(0, 3);
    int line = 1;
    std::size_t line_start = 0;
    const auto refuse = [&](std::size_t at, const std::string& why) {
        complaints.add({file, line, static_cast<int>(at - line_start) + 1}, "", why);
        return std::nullopt;
    };
    for (std::size_t at = 0; at < text.size();) {
        if (at == line_start)
            if (const auto tab = tab_in_indent(text, at); tab != std::string_view::npos)
                return refuse(tab, "a tab indents this line, expected spaces");
        const auto character = character_at(text, at);
        if (character.fault != nullptr) return refuse(at, std::string(character.fault) + ", expected UTF-8 text");
        if (text[at] == '\n') {
            ++line;
            line_start = at + 1;
        }
        at += character.length;
    }
    return text;
}

std::optional<std::string> read_text_file(const std::string& file, Complaints& complaints) {
    const auto refuse = [&](const std::string& why) {
        complaints.add({file, 0, 0}, "", why);
        return std::nullopt;
    };
    std::error_code failure;
    const auto status = std::filesystem::status(file, failure);
    if (!std::filesystem::exists(status))
        return refuse(status.type() == std::filesystem::file_type::not_found ? "no such file"
                                                                             : "cannot be read: " + failure.message());
    if (std::filesystem::is_directory(status)) return refuse("a folder, expected a file");
    if (!std::filesystem::is_regular_file(status)) return refuse("a pipe or device, expected a plain file");

    std::ifstream stream(file, std::ios::binary);
    std::string text(largest_file + 1, '\0');
    stream.read(text.data(), static_cast<std::streamsize>(text.size()));
    if (!stream.is_open() || stream.bad()) return refuse("cannot be read");
    text.resize(static_cast<std::size_t>(stream.gcount()));
    return check_text(std::move(text), file, complaints);
}

}  // namespace flutebook::catalogue
