// Secrets: made at random, compared without telling by time, kept as hashes. The one place that knows the library of
// cryptography.
#pragma once

#include <string>
#include <string_view>

namespace flutebook::web {

/// A password as a person typed it: a type of its own, so that it is never taken for a name, or kept where its hash
/// belongs.
struct Password {
    std::string text;
};

/// 256 random bits, in hex.
[[nodiscard]] std::string new_secret();

/// Takes as long whatever differs.
[[nodiscard]] bool is_same_secret(std::string_view left, std::string_view right);

/// By Argon2id: takes about a tenth of a second and 64 MiB. Throws std::bad_alloc where there is no memory.
[[nodiscard]] std::string password_hash(const Password& password);
/// The same time, also where `hash` is none of ours.
[[nodiscard]] bool is_password_of(const std::string& hash, const Password& password);

/// The SHA-256 of a text as a content policy names it: "sha256-...", in base64.
[[nodiscard]] std::string policy_hash(std::string_view text);

}  // namespace flutebook::web
