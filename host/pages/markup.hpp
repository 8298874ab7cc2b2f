// HTML by construction: markup is a literal that the compiler checks, everything else is escaped.
//
//     html("<a href=\"{}\">{}</a>", Address("/quotes").at(number), customer)
//
// What the compiler refuses: a std::string as markup; a place `{}` that no part fills, or that stands in a tag without
// quotes; an address that is no Address; a tag that is not closed in the same literal; style attributes, handlers of
// events, and scripts or styles within the page, which the pages' content policy forbids as well.
#pragma once

#include <array>
#include <concepts>
#include <cstddef>
#include <initializer_list>
#include <string>
#include <string_view>
#include <type_traits>

#include "host/pages/address.hpp"

namespace flutebook::pages {

/// A piece of HTML that may stand wherever text may.
class Html {
public:
    Html() = default;

    [[nodiscard]] const std::string& text() const { return text_; }
    [[nodiscard]] bool is_empty() const { return text_.empty(); }
    Html& operator+=(const Html& more) {
        text_ += more.text_;
        return *this;
    }

    [[nodiscard]] friend Html operator+(Html first, const Html& second) { return first += second; }

    /// What a renderer of this program wrote, which escapes what it is given: drawings and charts, nothing else.
    [[nodiscard]] static Html rendered(std::string markup) {
        Html result;
        result.text_ = std::move(markup);
        return result;
    }

private:
    friend class HtmlWriting;
    std::string text_;
};

/// Attributes that stand in a tag or do not: a literal like " checked", or nothing.
class Attribute {
public:
    constexpr Attribute() = default;
    consteval Attribute(const char* literal) : text_(literal) {
        if (text_.empty() || text_[0] != ' ') throw "an attribute begins with the space before it";
        for (const char sign : text_)
            if (sign == '<' || sign == '>' || sign == '{') throw "an attribute has no such sign";
    }

    [[nodiscard]] constexpr std::string_view text() const { return text_; }

private:
    std::string_view text_;
};

/// What fills a place: Html and Attribute as they are, everything else escaped.
class Part {
public:
    Part(const Html& html) : text_(html.text()) {}
    Part(const Attribute& attribute) : text_(attribute.text()) {}
    Part(const Address& address);
    Part(std::string_view text);
    Part(const std::string& text) : Part(std::string_view(text)) {}
    Part(const char* text) : Part(std::string_view(text)) {}
    template <std::integral Whole>
    Part(Whole whole) : text_(std::to_string(whole)) {}

    [[nodiscard]] const std::string& text() const { return text_; }

private:
    std::string text_;
};

/// Where the reader of a literal is.
class MarkupReader {
public:
    /// What may fill a place.
    enum class Fits { text, markup, attribute, address };

    constexpr explicit MarkupReader(std::string_view text) : text_(text) {}

    /// Reads to the next place, past it; false at the end. Throws what is wrong, which the compiler shows.
    constexpr bool reads_to_place(Fits fits) {
        for (; at_ < text_.size(); ++at_) {
            if (text_[at_] != '{') {
                read_sign(text_[at_]);
                continue;
            }
            if (text_.substr(at_, 2) != "{}") throw "a brace stands for a place alone";
            check_place(fits);
            at_ += 2;
            is_value_begun_ = true;
            return true;
        }
        return false;
    }

    constexpr void check_end() const {
        if (state_ != State::text) throw "a tag is not closed";
        if (depth_ != 0) throw "an element is not closed in the literal that opens it";
    }

private:
    enum class State { text, tag, value };

    constexpr void read_sign(char sign) {
        switch (state_) {
            case State::text:
                if (sign == '<') open_tag();
                return;
            case State::tag:
                return read_in_tag(sign);
            case State::value:
                if (sign == '"') {
                    state_ = State::tag;
                    name_begin_ = at_ + 1;
                } else {
                    is_value_begun_ = true;
                }
        }
    }

    constexpr void open_tag() {
        state_ = State::tag;
        tag_begin_ = at_ + 1;
        name_begin_ = at_ + 1;
    }

    constexpr void read_in_tag(char sign) {
        if (sign == '\'') throw "attributes stand in double quotes";
        if (sign == ' ') name_begin_ = at_ + 1;
        if (sign == '=') {
            check_attribute(text_.substr(name_begin_, at_ - name_begin_));
            if (at_ + 1 == text_.size() || text_[at_ + 1] != '"') throw "attributes stand in double quotes";
        }
        if (sign == '"') {
            state_ = State::value;
            is_value_begun_ = false;
        }
        if (sign == '>') end_tag();
    }

    constexpr void check_attribute(std::string_view name) {
        if (name == "style" || name.substr(0, 2) == "on") throw "the page's policy refuses this attribute";
        is_address_ = name == "href" || name == "src" || name == "action" || name == "formaction";
    }

    constexpr void end_tag() {
        state_ = State::text;
        const std::string_view whole = text_.substr(tag_begin_, at_ - tag_begin_);
        const std::string_view name = whole.substr(0, whole.find_first_of(" {"));
        if (name == "style") throw "the page's policy refuses styles in the page";
        if (name == "script" && text_.substr(at_ + 1, 9) != "</script>") throw "a script stands in a file of its own";
        if (name == "!doctype" || is_void(name) || whole.back() == '/') return;
        if (name[0] != '/') {
            if (depth_ == open_.size()) throw "elements stand too deep in one literal";
            open_[depth_++] = name;
        } else if (depth_ == 0 || open_[--depth_] != name.substr(1)) {
            throw "an end of an element that was not opened last";
        }
    }

    static constexpr bool is_void(std::string_view name) {
        constexpr std::array<std::string_view, 7> names = {"br", "hr", "img", "input", "link", "meta", "wbr"};
        for (const std::string_view item : names)
            if (name == item) return true;
        return false;
    }

    constexpr void check_place(Fits fits) const {
        if (state_ == State::tag) {
            if (fits != Fits::attribute) throw "in a tag, a place outside quotes takes an Attribute alone";
            return;
        }
        if (fits == Fits::attribute) throw "an Attribute stands in a tag";
        if (state_ == State::value && fits == Fits::markup) throw "Html does not stand in an attribute";
        const bool begins_address = state_ == State::value && is_address_ && !is_value_begun_;
        if (begins_address && fits != Fits::address) throw "an attribute that is followed takes an Address";
    }

    std::string_view text_;
    std::size_t at_ = 0, tag_begin_ = 0, name_begin_ = 0;
    State state_ = State::text;
    bool is_address_ = false, is_value_begun_ = false;
    std::array<std::string_view, 24> open_{};
    std::size_t depth_ = 0;
};

template <typename Type>
constexpr MarkupReader::Fits fits_of() {
    using Fits = MarkupReader::Fits;
    if constexpr (std::is_same_v<Type, Html>) return Fits::markup;
    if constexpr (std::is_same_v<Type, Attribute>) return Fits::attribute;
    return std::is_same_v<Type, Address> ? Fits::address : Fits::text;
}

/// A literal with a place for each part.
template <typename... Parts>
class MarkupLiteral {
public:
    consteval MarkupLiteral(const char* literal) : text_(literal) {
        MarkupReader reader(text_);
        const bool fills_all = (true && ... && reader.reads_to_place(fits_of<std::decay_t<Parts>>()));
        if (!fills_all) throw "more parts than places";
        if (reader.reads_to_place(MarkupReader::Fits::text)) throw "more places than parts";
        reader.check_end();
    }

    [[nodiscard]] constexpr std::string_view text() const { return text_; }

private:
    std::string_view text_;
};

/// Puts parts into the places of a literal that was checked.
class HtmlWriting {
public:
    [[nodiscard]] static Html filled(std::string_view literal, std::initializer_list<Part> parts);
};

template <typename... Parts>
[[nodiscard]] Html html(MarkupLiteral<std::type_identity_t<Parts>...> literal, const Parts&... parts) {
    return HtmlWriting::filled(literal.text(), {Part(parts)...});
}

/// A text alone, escaped.
[[nodiscard]] inline Html words(std::string_view text) {
    return html("{}", text);
}

}  // namespace flutebook::pages
