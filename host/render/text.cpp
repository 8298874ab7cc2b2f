// Text is measured and cut by whole characters.
#include "host/render/text.hpp"

#include <algorithm>

#include "host/base/characters.hpp"

namespace flutebook::render {

namespace {

constexpr std::string_view replacement = "\xEF\xBF\xBD";  // U+FFFD

// Bytes of the characters that fit into `width` columns.
std::size_t bytes_within(std::string_view text, std::size_t width) {
    std::size_t at = 0;
    for (std::size_t columns = 0; at < text.size();) {
        const base::Character character = base::character_at(text, at);
        columns += character.columns;
        if (columns > width) break;
        at += character.length;
    }
    return at;
}

// Lines of words that stay whole.
std::vector<std::string> filled(const std::vector<std::string>& words, std::size_t width) {
    std::vector<std::string> lines(1);
    for (const std::string& word : words) {
        if (!lines.back().empty() && width_of(lines.back()) + 1 + width_of(word) > width) lines.emplace_back();
        if (!lines.back().empty()) lines.back() += ' ';
        lines.back() += word;
    }
    return lines;
}

// "15" and "1/4" are one number.
bool is_fraction_of(std::string_view whole, std::string_view word) {
    return base::is_digit(whole.back()) && word.size() > 2 && base::is_digit(word.front()) &&
           base::is_digit(word.back()) && word.substr(1, 2).find('/') != std::string_view::npos;
}

std::size_t room_behind(std::string_view first, std::size_t width) {
    const std::size_t indent = width_of(first);
    return width > indent ? width - indent : 1;
}

std::string behind(std::string_view first, const std::vector<std::string>& lines) {
    std::string result(first);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        if (i != 0) result.append(width_of(first), ' ');
        result += lines[i];
        result += '\n';
    }
    return result;
}

}  // namespace

std::size_t width_of(std::string_view text) {
    std::size_t columns = 0;
    for (std::size_t at = 0; at < text.size();) {
        const base::Character character = base::character_at(text, at);
        columns += character.columns;
        at += character.length;
    }
    return columns;
}

std::string cleaned(std::string_view text) {
    std::string result;
    result.reserve(text.size());
    for (std::size_t at = 0; at < text.size();) {
        const base::Character character = base::character_at(text, at);
        if (character.fault == base::CharacterFault::encoding)
            result += replacement;
        else if (character.fault != base::CharacterFault::none)
            result += ' ';
        else
            result += text.substr(at, character.length);
        at += character.length;
    }
    return result;
}

std::string cut(std::string_view text, std::size_t width) {
    if (width_of(text) <= width) return std::string(text);
    const std::size_t dots = std::min<std::size_t>(width, 3);
    return std::string(text.substr(0, bytes_within(text, width - dots))) + std::string(dots, '.');
}

std::vector<std::string> wrapped(std::string_view text, std::size_t width) {
    std::vector<std::string> words;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t space = std::min(text.find(' ', at), text.size());
        const std::string_view word = text.substr(at, space - at);
        if (!words.empty() && is_fraction_of(words.back(), word))
            words.back().append(" ").append(word);
        else if (!word.empty())
            words.emplace_back(word);
        at = space + 1;
    }
    return filled(words, width);
}

std::string hanging(std::string_view first, std::string_view text, std::size_t width) {
    return behind(first, wrapped(text, room_behind(first, width)));
}

std::string hanging(std::string_view first, const std::vector<std::string>& items, std::size_t width) {
    if (items.empty()) return "";
    std::vector<std::string> words;
    for (const std::string& item : items) words.push_back(cleaned(item) + (words.size() + 1 < items.size() ? "," : ""));
    return behind(first, filled(words, room_behind(first, width)));
}

std::string edges(std::string_view left, std::string_view right, std::size_t width) {
    const std::size_t taken = width_of(left) + width_of(right);
    if (right.empty()) return hanging("", left, width);
    if (taken + 2 > width) return hanging("", left, width) + hanging("", right, width);
    return std::string(left) + std::string(width - taken, ' ') + std::string(right) + "\n";
}

std::string rule(char stroke, std::size_t width) {
    return std::string(width, stroke) + "\n";
}

}  // namespace flutebook::render
