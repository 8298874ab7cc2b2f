// The sign-in form, and what replaces it after a person has signed in.
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
