// Each character is replaced at most once, in one pass.
#include "host/render/escaping.hpp"

#include <algorithm>
#include <array>

#include "host/base/characters.hpp"
#include "host/render/text.hpp"

namespace flutebook::render {

namespace {

// What makes a spreadsheet calculate, in half and full width, after OWASP's application security verification standard
// 5.0, item 1.2.10 (seen at second hand).
constexpr std::array<std::string_view, 11> formula_beginnings = {
    "=", "+", "-", "@", "\t", "\r", "\n", "\xEF\xBC\x9D", "\xEF\xBC\x8B", "\xEF\xBC\x8D", "\xEF\xBC\xA0"};

bool begins_a_formula(std::string_view text) {
    if (!text.empty() && text.front() == '\0') return true;
    return std::any_of(formula_beginnings.begin(), formula_beginnings.end(),
                       [&](std::string_view beginning) { return text.substr(0, beginning.size()) == beginning; });
}

std::string_view markup_of(std::string_view sign) {
    if (sign == "&") return "&amp;";
    if (sign == "<") return "&lt;";
    if (sign == ">") return "&gt;";
    if (sign == "\"") return "&quot;";
    return sign == "\xEF\xBF\xBE" || sign == "\xEF\xBF\xBF" ? "?" : sign;
}

}  // namespace

std::string markup_text(std::string_view text) {
    std::string result;
    for (std::size_t at = 0; at < text.size();) {
        const base::Character character = base::character_at(text, at);
        if (character.fault != base::CharacterFault::none)
            result += '?';
        else
            result += markup_of(text.substr(at, character.length));
        at += character.length;
    }
    return result;
}

std::string markdown_text(std::string_view text) {
    constexpr std::string_view signs = "\\`*_[]<>|#&";
    std::string result;
    for (const char sign : cleaned(text)) {
        if (signs.find(sign) != std::string_view::npos) result += '\\';
        result += sign;
    }
    return result;
}

// A backtick cannot be escaped within backticks.
std::string markdown_code(std::string_view text) {
    std::string result = "`";
    for (const char sign : cleaned(text)) {
        if (sign == '|') result += '\\';
        result += sign == '`' ? '\'' : sign;
    }
    return result + "`";
}

std::string csv_cell(std::string_view text) {
    std::string result = begins_a_formula(text) ? "\"'" : "\"";
    for (const char sign : text) {
        if (sign == '"') result += '"';
        result += sign;
    }
    return result + "\"";
}

}  // namespace flutebook::render
