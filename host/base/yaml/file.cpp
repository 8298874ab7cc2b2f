// Reads a file that may be hostile: checks its kind and size first, then its bytes, then their meaning. Only a plain
// file is opened: a pipe or a device could be waited for forever.
#include "host/base/yaml/file.hpp"

#include <fmt/format.h>

#include <array>
#include <cstddef>
#include <filesystem>
#include <fstream>
#include <string_view>
#include <system_error>
#include <utility>

#include "host/base/characters.hpp"

namespace flutebook::base {

namespace {

constexpr auto nowhere = std::string_view::npos;

// A tab before the first word of the line that starts at `at`. In a comment or an empty line it does no harm.
std::size_t tab_in_indent(std::string_view text, std::size_t at) {
    const auto word = text.find_first_not_of(" \t\r", at);
    if (word == nowhere || text[word] == '\n' || text[word] == '#') return nowhere;
    const auto tab = text.find('\t', at);
    return tab < word ? tab : nowhere;
}

// Line ends and tabs may stand in a file.
bool is_layout(char sign) {
    return sign == '\t' || sign == '\n' || sign == '\r';
}

// Where a file's text is unfit, and why.
struct UnreadableFile {
    std::size_t at;
    std::string why;
};

std::optional<UnreadableFile> first_unfit(std::string_view text) {
    bool starts_line = true;
    for (std::size_t at = 0; at < text.size();) {
        if (starts_line)
            if (const auto tab = tab_in_indent(text, at); tab != nowhere)
                return UnreadableFile{tab, "a tab indents this line, expected spaces"};
        const auto character = character_at(text, at);
        if (character.fault != CharacterFault::none && !is_layout(text[at]))
            return UnreadableFile{at, fault_text(text, at) + ", expected UTF-8 text"};
        starts_line = text[at] == '\n';
        at += character.length;
    }
    return std::nullopt;
}

Place place_in(std::string_view text, std::size_t at, const std::string& file) {
    int line = 1;
    std::size_t line_start = 0;
    for (std::size_t i = 0; i < at; ++i) {
        if (text[i] != '\n') continue;
        ++line;
        line_start = i + 1;
    }
    return {file, line, static_cast<int>(at - line_start) + 1};
}

}  // namespace

std::optional<std::string> check_text(std::string text, const std::string& file, Diagnostics& complaints) {
    if (text.size() > largest_file) {
        complaints.add({file, 0, 0}, "", fmt::format("too large, expected at most {} KB", largest_file / 1024));
        return std::nullopt;
    }
    if (text.starts_with("\xEF\xBB\xBF")) text.erase(0, 3);
    if (const auto unfit = first_unfit(text)) {
        complaints.add(place_in(text, unfit->at, file), "", unfit->why);
        return std::nullopt;
    }
    return text;
}

std::optional<std::string> read_text_file(const std::string& file, Diagnostics& complaints) {
    const auto refuse = [&](const std::string& why) {
        complaints.add({file, 0, 0}, "", why);
        return std::nullopt;
    };
    std::error_code failure;
    const auto status = std::filesystem::status(file, failure);
    if (status.type() == std::filesystem::file_type::not_found) return refuse("no such file");
    if (!std::filesystem::exists(status)) return refuse("cannot be read: " + failure.message());
    if (std::filesystem::is_directory(status)) return refuse("a folder, expected a file");
    if (!std::filesystem::is_regular_file(status)) return refuse("a pipe or device, expected a plain file");

    std::ifstream stream(file, std::ios::binary);
    std::string text;
    std::array<char, 16384> piece{};
    // One byte too many is enough to know.
    while (stream && text.size() <= largest_file) {
        stream.read(piece.data(), static_cast<std::streamsize>(piece.size()));
        text.append(piece.data(), static_cast<std::size_t>(stream.gcount()));
    }
    if (!stream.is_open() || stream.bad()) return refuse("cannot be read: check its permissions");
    return check_text(std::move(text), file, complaints);
}

}  // namespace flutebook::base
