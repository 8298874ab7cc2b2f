// Encodes as browsers encode the fields of a form, so that a link and a form that say the same have one address.
#include "host/pages/address.hpp"

#include <fmt/format.h>

namespace flutebook::pages {

namespace {

enum class Space { plus, percent };

std::string encoded(std::string_view text, Space space) {
    constexpr std::string_view kept = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789*-._";
    std::string result;
    for (const char sign : text) {
        if (kept.find(sign) != std::string_view::npos)
            result += sign;
        else if (sign == ' ' && space == Space::plus)
            result += '+';
        else
            result += fmt::format("%{:02X}", static_cast<unsigned char>(sign));
    }
    return result;
}

}  // namespace

// A segment of dots alone would lead upwards.
Address Address::at(std::string_view segment) const {
    Address result = *this;
    const bool has_dots_alone = segment.find_first_not_of('.') == std::string_view::npos;
    result.path_ += "/" + (has_dots_alone ? "_" : encoded(segment, Space::percent));
    return result;
}

Address Address::with(std::string_view name, std::string_view value) const {
    Address result = *this;
    result.query_ += query_.empty() ? "?" : "&";
    result.query_ += encoded(name, Space::plus) + "=" + encoded(value, Space::plus);
    return result;
}

Address Address::to(std::string_view id) const {
    Address result = *this;
    result.place_ = "#" + encoded(id, Space::percent);
    return result;
}

}  // namespace flutebook::pages
