#include "host/http/head_rules.hpp"

#include <algorithm>
#include <array>

namespace flutebook::http {

namespace {

// Those of which a page may say that it does not have them.
constexpr std::array<std::string_view, 7> known_methods = {"GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS"};

}  // namespace

std::string lower_case(std::string_view text) {
    std::string result(text);
    for (char& sign : result)
        if (sign >= 'A' && sign <= 'Z') sign = static_cast<char>(sign - 'A' + 'a');
    return result;
}

std::optional<RequestRefusal> refused_head(const Request& head, unsigned version, std::size_t most_headers) {
    const auto count = [&](std::string_view name) {
        return std::count_if(head.headers.begin(), head.headers.end(),
                             [&](const auto& header) { return header.first == name; });
    };
    if (version != 11 && version != 10) return RequestRefusal{505, "request: is of another version of HTTP"};
    if (count("host") != 1)
        return RequestRefusal{421, "host: the request must name one: found none or several; send one"};
    if (count("transfer-encoding") > 0)
        return RequestRefusal{411, "transfer-encoding: not taken: send the body whole, with its content-length"};
    if (count("content-encoding") > 0)
        return RequestRefusal{415, "content-encoding: not taken: send the body as it is"};
    if (count("expect") > 0) return RequestRefusal{417, "expect: not taken: send the body at once"};
    if (std::find(known_methods.begin(), known_methods.end(), head.method) == known_methods.end())
        return RequestRefusal{501, "method: is not known here; send GET, HEAD or POST"};
    if (head.target.empty() || head.target.front() != '/' || head.target.find('#') != std::string::npos)
        return RequestRefusal{400, "target: must be a path of this server that begins with a slash"};
    if (head.headers.size() > most_headers) return RequestRefusal{431, "request: has too many headers; send fewer"};
    return std::nullopt;
}

bool has_folded_header(std::string_view bytes) {
    const std::string_view head = bytes.substr(0, bytes.find("\r\n\r\n"));
    return head.find("\n ") != std::string_view::npos || head.find("\n\t") != std::string_view::npos;
}

}  // namespace flutebook::http
