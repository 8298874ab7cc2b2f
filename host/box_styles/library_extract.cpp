#include "host/box_styles/library_extract.hpp"

#include <algorithm>
#include <string_view>
#include <vector>

namespace flutebook::box_styles {

namespace {

// What stands in quotes behind `start`; empty where the line does not begin so.
std::string_view quoted_after(std::string_view line, std::string_view start) {
    if (!line.starts_with(start)) return {};
    line.remove_prefix(start.size());
    return line.substr(0, line.find('"'));
}

// The lines of a style, whether they are wanted, and the style that it is like.
struct StyleLines {
    std::string_view code, like;
    std::size_t begin, end;
};

struct LibraryLines {
    std::vector<std::string_view> lines;
    std::vector<StyleLines> styles;
};

LibraryLines lines_of(std::string_view text) {
    LibraryLines result;
    while (!text.empty()) {
        const auto end = std::min(text.find('\n'), text.size());
        const std::string_view line = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        const std::size_t number = result.lines.size();
        result.lines.push_back(line);
        if (const auto code = quoted_after(line, "  \""); !code.empty())
            result.styles.push_back({code, {}, number, number});
        if (result.styles.empty()) continue;
        result.styles.back().end = number + 1;
        if (const auto like = quoted_after(line, "    like: \""); !like.empty()) result.styles.back().like = like;
    }
    return result;
}

}  // namespace

std::string library_extract(const std::string& text, const std::string& code) {
    const LibraryLines library = lines_of(text);
    if (library.styles.empty() || code.empty()) return {};
    std::vector<bool> is_wanted(library.lines.size(), false);
    std::fill_n(is_wanted.begin(), library.styles.front().begin, true);
    std::string_view wanted = code;
    // Each is like one that is not yet in: there are no more steps than styles.
    for (std::size_t step = 0; !wanted.empty() && step < library.styles.size(); ++step) {
        const auto style = std::find_if(library.styles.begin(), library.styles.end(),
                                        [&](const StyleLines& other) { return other.code == wanted; });
        if (style == library.styles.end()) return {};
        for (std::size_t line = style->begin; line < style->end; ++line) is_wanted[line] = true;
        wanted = style->like;
    }
    std::string result;
    for (std::size_t line = 0; line < library.lines.size(); ++line) {
        if (is_wanted[line]) result += library.lines[line];
        result += '\n';
    }
    return result;
}

}  // namespace flutebook::box_styles
