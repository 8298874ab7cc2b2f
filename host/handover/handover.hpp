// Hands a server's sockets and its memory to the program that replaces it in the same process.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "host/http/server.hpp"

namespace flutebook::handover {

struct Handover {
    http::Sockets sockets;
    std::string kept;
};

/// Listens on the loopback address, on a free port where `port` is 0. Throws InputError (request) where the port cannot
/// be had.
[[nodiscard]] int listening_socket(std::uint16_t port);

/// What this process was started with by go_on(); nothing where a person started it. At the second call, nothing.
[[nodiscard]] std::optional<Handover> taken_over();

/// Runs the program anew in place of this process, with the words it was started with. Nothing else may be under way.
/// Signals wait for it. Throws std::system_error where it cannot be run.
[[noreturn]] void go_on(const Handover& with);

}  // namespace flutebook::handover
