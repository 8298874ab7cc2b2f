// All addresses that are served, as one table: who may ask for each, how large a body it takes, and what answers.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "host/web/call.hpp"

namespace flutebook::web {

struct Route {
    enum class Body { none, form, form_or_csv };
    /// Of a request that changes something: `token` of the session must come with it; `origin`: nobody has a session
    /// yet, so that the browser must say where the form stood.
    enum class Proof { none, token, origin };
    std::string_view method,
        pattern;  // "/quotes/{}.html": a place takes a segment, or what of it stands before the dot
    pages::Role least;
    Body body;
    std::size_t most_bytes;
    Proof proof;
    Handler handler;
};

[[nodiscard]] const std::vector<Route>& routes();

/// What stands in the places of a pattern; nothing where the path is another.
[[nodiscard]] std::optional<std::vector<std::string>> match(std::string_view pattern,
                                                            const std::vector<std::string>& segments);

}  // namespace flutebook::web
