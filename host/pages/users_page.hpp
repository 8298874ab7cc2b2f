// The list of users and their roles.
#pragma once

#include <string>
#include <vector>

#include "host/pages/frame.hpp"

namespace flutebook::pages {

struct ListedUser {
    std::string name, role;
    bool is_off;
};

[[nodiscard]] std::string users_page(const Frame& frame, const std::vector<ListedUser>& users);

}  // namespace flutebook::pages
