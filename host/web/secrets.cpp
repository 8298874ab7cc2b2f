#include "host/web/secrets.hpp"

#include <sodium.h>

#include <array>
#include <mutex>
#include <new>
#include <stdexcept>

#include "ledger/values/sha256.hpp"

namespace flutebook::web {

namespace {

void begin() {
    static const int ready = sodium_init();
    if (ready < 0) throw std::runtime_error("the library of cryptography cannot be used");
}

// One at a time: each takes 64 MiB.
std::mutex& hashing() {
    static std::mutex mutex;
    return mutex;
}

}  // namespace

std::string new_secret() {
    begin();
    ledger::Hash bytes;
    randombytes_buf(bytes.data(), bytes.size());
    return ledger::to_hex(bytes);
}

bool is_same_secret(std::string_view left, std::string_view right) {
    begin();
    return left.size() == right.size() && sodium_memcmp(left.data(), right.data(), left.size()) == 0;
}

std::string password_hash(const Password& password) {
    begin();
    const std::lock_guard lock(hashing());
    std::array<char, crypto_pwhash_STRBYTES> hash{};
    if (crypto_pwhash_str(hash.data(), password.text.data(), password.text.size(), crypto_pwhash_OPSLIMIT_INTERACTIVE,
                          crypto_pwhash_MEMLIMIT_INTERACTIVE) != 0)
        throw std::bad_alloc();
    return hash.data();
}

bool is_password_of(const std::string& hash, const Password& password) {
    begin();
    const std::lock_guard lock(hashing());
    return crypto_pwhash_str_verify(hash.c_str(), password.text.data(), password.text.size()) == 0;
}

std::string policy_hash(std::string_view text) {
    begin();
    const ledger::Hash hash = ledger::sha256(text);
    std::array<char, sodium_base64_ENCODED_LEN(32, sodium_base64_VARIANT_ORIGINAL)> base64{};
    std::array<unsigned char, 32> bytes{};
    for (std::size_t at = 0; at < bytes.size(); ++at) bytes[at] = static_cast<unsigned char>(hash[at]);
    sodium_bin2base64(base64.data(), base64.size(), bytes.data(), bytes.size(), sodium_base64_VARIANT_ORIGINAL);
    return std::string("sha256-") + base64.data();
}

}  // namespace flutebook::web
