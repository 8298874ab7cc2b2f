// Who is at the desk: the form by which a person signs in, and what stands in its place once somebody has.
#pragma once

#include <string>

#include "host/pages/frame.hpp"

namespace flutebook::pages {

/// How people come in here.
enum class Door {
    password,  // by name and password
    terminal,  // by the address that the terminal shows
};

struct SignIn {
    Door door;
    std::string fault;  // why the last try failed; empty where none did
};

/// Of a frame with a person: who it is, and how to go.
[[nodiscard]] std::string sign_in_page(const Frame& frame, const SignIn& asked);

}  // namespace flutebook::pages
