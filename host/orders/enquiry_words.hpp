// The words of a typed line: the position of each, and its kind.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace flutebook::orders {

/// A word and its column, from 1.
struct EnquiryWord {
    std::string text;
    int column;
};

/// Split at spaces, but not within double quotes, which are taken off, nor within a size: `15 1/4 x 12 x 10 in` is one
/// word.
[[nodiscard]] std::vector<EnquiryWord> enquiry_words(const std::string& line);

/// The two or three lengths of `400x300x250`, `400 x 300 x 250 mm` or `15 1/4x12x10 in`, as written, each with the
/// unit; nothing where the text is no size.
[[nodiscard]] std::optional<std::vector<std::string>> lengths_of(const std::string& text);

/// "0.125" of "12.5%"; nothing where the text is no share in per cent.
[[nodiscard]] std::optional<std::string> share_of(std::string_view text);

/// "12.5" of "0.125"; of another text nothing that counts.
[[nodiscard]] std::string share_in_per_cent(const std::string& share);

/// Digits alone, the first not 0.
[[nodiscard]] bool is_whole_number(std::string_view text);

}  // namespace flutebook::orders
