// What one process of a server leaves to the next, as bytes: nobody is signed out by a reload, nothing that was looked
// at must be sent again, and no wait after a wrong password ends.
#pragma once

#include <string>

#include "host/plant/plant.hpp"

namespace flutebook::web {

struct Kept {
    std::string key;                            // empty: there was no process before
    std::string sessions, documents, failures;  // as Sessions, Documents and Users write theirs
    plant::FileTexts files;                     // of the plant that was served
};

[[nodiscard]] std::string in_bytes(const Kept& kept);
/// Of no bytes, nothing kept. Throws std::runtime_error where it is none of ours.
[[nodiscard]] Kept kept_of(const std::string& bytes);

}  // namespace flutebook::web
