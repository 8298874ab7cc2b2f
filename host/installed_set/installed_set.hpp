// The installed set: the files of the models that were built with this program and keep every rule of the check.
//
// The build tries each model by every rule (check_models.cpp) and writes the SHA-256 of each that passed into a source
// of this program. So a file of the set needs no trial, at any start, and nothing outside the program says which files
// are in it.
#pragma once

#include <span>
#include <string_view>

namespace flutebook::installed_set {

/// The SHA-256 of each file, in lower-case hexadecimal digits.
[[nodiscard]] std::span<const std::string_view> installed_models();

}  // namespace flutebook::installed_set
