// What a request's head must be before anything reads it: a head that could be read in two ways, or that announces
// something unsupported, is refused.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "host/http/message.hpp"

namespace flutebook::http {

struct RequestRefusal {
    int status;
    std::string text;
};

[[nodiscard]] std::string lower_case(std::string_view text);

/// `version` as 10 * major + minor; nothing where the head is fit.
[[nodiscard]] std::optional<RequestRefusal> refused_head(const Request& head, unsigned version,
                                                         std::size_t most_headers);

/// Whether a header goes on in the next line: read differently by different programs. `bytes` begin with a head.
[[nodiscard]] bool has_folded_header(std::string_view bytes);

}  // namespace flutebook::http
