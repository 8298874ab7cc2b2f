#include "ledger/store/packing.hpp"

#include <zlib.h>

namespace flutebook::ledger {

namespace {

// Below this the row itself is as large as what would be saved.
constexpr std::size_t smallest_packed = 256;

const Bytef* zlib_bytes(std::string_view text) {
    return reinterpret_cast<const Bytef*>(text.data());
}

}  // namespace

std::optional<std::string> packed(const std::string& content) {
    if (content.size() < smallest_packed || content.size() > largest_content) return std::nullopt;
    auto size = compressBound(content.size());
    std::string bytes(size, '\0');
    const int answer = compress2(reinterpret_cast<Bytef*>(bytes.data()), &size, zlib_bytes(content), content.size(),
                                 Z_DEFAULT_COMPRESSION);
    bytes.resize(size);
    if (answer != Z_OK || size > content.size() / 4 * 3) return std::nullopt;
    return bytes;
}

std::optional<std::string> unpacked(std::string_view bytes, std::int64_t size) {
    if (size < 1 || size > static_cast<std::int64_t>(largest_content)) return std::nullopt;
    std::string content(static_cast<std::size_t>(size), '\0');
    auto length = static_cast<uLongf>(size);
    const int answer = uncompress(reinterpret_cast<Bytef*>(content.data()), &length, zlib_bytes(bytes), bytes.size());
    if (answer != Z_OK || length != content.size()) return std::nullopt;
    return content;
}

}  // namespace flutebook::ledger
