// The frame of every page: head, navigation, notices, and the name of the user.
#pragma once

#include <string>
#include <vector>

#include "host/pages/address.hpp"
#include "host/pages/markup.hpp"

namespace flutebook::plant {
struct Plant;
}

namespace flutebook::pages {

/// Each may do all that the one before may. `nobody` has not signed in.
enum class Role { nobody, reader, accountant, controller, keeper };

/// "nobody", "reader" ... "keeper".
[[nodiscard]] const char* role_name(Role role);

/// Which entry of the navigation is current.
enum class Place { none, quotes, orders, months, models, styles, plant, guide, users };

/// What is told above the page: "machines.yaml changed at 10:41; costed with the older".
struct Notice {
    enum class Kind { news, warning, plant };  // plant: its files are others by now; a keeper may reload them
    std::string text;
    Kind kind = Kind::news;
};

struct Frame {
    std::string plant;   // its name; empty where nobody may know it yet
    std::string person;  // at the desk; empty where nobody is
    Role role = Role::nobody;
    std::string token;  // of the session; every form that posts carries it
    std::vector<Notice> notices;
    Place place = Place::none;
    Address assets{"/assets"};                 // the folder they are served from, by Asset::served_as
    std::vector<std::string> scripts{};        // further modules of this page, by Asset::name
    const plant::Plant* open_plant = nullptr;  // to whose files places lead; null: places are plain texts

    [[nodiscard]] bool may(Role least) const { return role >= least; }
};

/// The whole document around `body`, which fills its `main`. `title` names the page among a browser's tabs.
[[nodiscard]] std::string document(const Frame& frame, std::string_view title, const Html& body);

/// The hidden field that every form that posts begins with.
[[nodiscard]] Html token_field(const Frame& frame);

}  // namespace flutebook::pages
