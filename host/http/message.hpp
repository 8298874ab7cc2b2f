// An HTTP request and its response as plain values.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace flutebook::http {

/// Names of headers in lower case.
using Headers = std::vector<std::pair<std::string, std::string>>;

struct Request {
    std::string method;  // as sent; a HEAD is answered as a GET whose body stays here
    std::string target;  // path and query as sent: begins with a slash
    Headers headers;
    std::string body;
    std::string peer;  // the address of whoever connected

    /// The header's value; empty where it was not sent.
    [[nodiscard]] std::string_view header(std::string_view name) const {
        for (const auto& [key, value] : headers)
            if (key == name) return value;
        return {};
    }
};

struct Response {
    int status = 200;
    std::string content_type = "text/html; charset=utf-8";
    std::string body = {};
    Headers headers = {};
};

}  // namespace flutebook::http
