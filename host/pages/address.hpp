// Addresses of our own pages: a path that the compiler knows, with what differs encoded behind it. So no text that a
// person wrote ever becomes another path, another site or a script.
#pragma once

#include <string>
#include <string_view>

namespace flutebook::pages {

/// A path as a literal: "/quotes", or relative, "assets". Any other does not compile.
class Path {
public:
    consteval Path(const char* literal) : text_(literal) {
        if (text_.empty() || text_.substr(0, 2) == "//") throw "a path begins with one slash, or with a name";
        for (const char sign : text_)
            if (!is_plain(sign)) throw "a path has letters, digits and the signs / - _ . alone";
    }

    [[nodiscard]] constexpr std::string_view text() const { return text_; }

private:
    static constexpr bool is_plain(char sign) {
        return (sign >= 'a' && sign <= 'z') || (sign >= 'A' && sign <= 'Z') || (sign >= '0' && sign <= '9') ||
               sign == '/' || sign == '-' || sign == '_' || sign == '.';
    }

    std::string_view text_;
};

class Address {
public:
    explicit Address(Path path) : path_(path.text()) {}
    /// The page itself, to be asked with other fields, or at one of its elements.
    [[nodiscard]] static Address here() { return {}; }

    /// One more segment of the path, encoded: Address("/quotes").at("Q000001").
    [[nodiscard]] Address at(std::string_view segment) const;
    /// One more field of the query, encoded as a form does.
    [[nodiscard]] Address with(std::string_view name, std::string_view value) const;
    /// At the element of this id.
    [[nodiscard]] Address to(std::string_view id) const;

    /// Whole, not yet escaped for markup.
    [[nodiscard]] std::string text() const { return path_ + query_ + place_; }

private:
    Address() = default;

    std::string path_, query_, place_;
};

}  // namespace flutebook::pages
