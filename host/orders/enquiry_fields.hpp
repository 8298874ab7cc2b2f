// An enquiry as the fields of a form, and the line that says the same: a form and a line are two ways to write one
// thing, so that the address of either is a draft that can be passed on.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "host/plant/plant.hpp"

namespace flutebook::orders {

/// Each as a person would type it; empty where nothing is said.
struct EnquiryFields {
    std::string request, customer, date, style, length, width, height, board;
    std::string quantities, route;                           // several, with spaces between them
    std::string margin, colours;                             // "18" in per cent; "2"
    std::vector<std::pair<std::string, std::string>> named;  // measures of the style, `MODEL.SETTING`, `flutes`
};

/// The line that says what the fields say, word by word; what is wrong in a field is wrong in the line.
[[nodiscard]] std::string enquiry_line(const EnquiryFields& fields);

/// The fields that a line fills, as far as each word alone is understood.
[[nodiscard]] EnquiryFields enquiry_fields(const plant::Plant& plant, const std::string& line);

/// The fields that say what a request's file says, but for its day and for what it was copied from: a revision has a
/// day of its own. Nothing where a line cannot say all of it (an outline, outside sizes, trim, a route by piece), or
/// where the text is no request.
[[nodiscard]] std::optional<EnquiryFields> request_fields(const std::string& request_text);

}  // namespace flutebook::orders
