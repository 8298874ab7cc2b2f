#include "ledger/values/sha256.hpp"

#include <openssl/evp.h>

#include <algorithm>
#include <memory>
#include <new>

namespace flutebook::ledger {

namespace {

// Made once a thread: looking the algorithm up takes longer than hashing an entry.
class Digest {
public:
    Digest()
        : context_(EVP_MD_CTX_new(), EVP_MD_CTX_free),
          algorithm_(EVP_MD_fetch(nullptr, "SHA256", nullptr), EVP_MD_free) {
        if (!context_ || !algorithm_ || EVP_DigestInit_ex2(context_.get(), algorithm_.get(), nullptr) != 1)
            throw std::bad_alloc();
    }

    [[nodiscard]] Hash of(std::string_view bytes) {
        std::array<unsigned char, 32> sum{};
        if (EVP_DigestInit_ex2(context_.get(), nullptr, nullptr) != 1 ||
            EVP_DigestUpdate(context_.get(), bytes.data(), bytes.size()) != 1 ||
            EVP_DigestFinal_ex(context_.get(), sum.data(), nullptr) != 1)
            throw std::bad_alloc();
        Hash hash{};
        std::transform(sum.begin(), sum.end(), hash.begin(),
                       [](unsigned char byte) { return static_cast<char>(byte); });
        return hash;
    }

private:
    std::unique_ptr<EVP_MD_CTX, decltype(&EVP_MD_CTX_free)> context_;
    std::unique_ptr<EVP_MD, decltype(&EVP_MD_free)> algorithm_;
};

std::optional<int> value_of(char digit) {
    if (digit >= '0' && digit <= '9') return digit - '0';
    if (digit >= 'a' && digit <= 'f') return digit - 'a' + 10;
    if (digit >= 'A' && digit <= 'F') return digit - 'A' + 10;
    return std::nullopt;
}

}  // namespace

Hash sha256(std::string_view bytes) {
    thread_local Digest digest;
    return digest.of(bytes);
}

std::string to_hex(const Hash& hash) {
    constexpr std::string_view digits = "0123456789abcdef";
    std::string text;
    for (const char sign : hash) {
        const auto byte = static_cast<unsigned char>(sign);
        text += digits[byte >> 4U];
        text += digits[byte & 15U];
    }
    return text;
}

std::optional<Hash> from_hex(std::string_view digits) {
    Hash hash{};
    if (digits.size() != 2 * hash.size()) return std::nullopt;
    for (std::size_t i = 0; i < hash.size(); ++i) {
        const auto high = value_of(digits[2 * i]);
        const auto low = value_of(digits[2 * i + 1]);
        if (!high || !low) return std::nullopt;
        hash[i] = static_cast<char>(*high * 16 + *low);
    }
    return hash;
}

std::optional<Hash> from_bytes(std::string_view bytes) {
    Hash hash{};
    if (bytes.size() != hash.size()) return std::nullopt;
    std::copy(bytes.begin(), bytes.end(), hash.begin());
    return hash;
}

}  // namespace flutebook::ledger
