#include "host/web/kept.hpp"

#include <cstddef>

#include "host/handover/texts.hpp"

namespace flutebook::web {

namespace {

constexpr std::size_t parts_before_files = 4;

}  // namespace

std::string in_bytes(const Kept& kept) {
    std::vector<std::string> texts = {kept.key, kept.sessions, kept.documents, kept.failures};
    for (const auto& [name, text] : kept.files) {
        texts.push_back(name);
        texts.push_back(text);
    }
    return handover::in_bytes(texts);
}

Kept kept_of(const std::string& bytes) {
    if (bytes.empty()) return {};
    const std::vector<std::string> texts = handover::texts_of(bytes);
    if (texts.size() < parts_before_files || (texts.size() - parts_before_files) % 2 != 0) handover::fail_to_read();
    Kept result{texts[0], texts[1], texts[2], texts[3], {}};
    for (std::size_t i = parts_before_files; i < texts.size(); i += 2) result.files.emplace(texts[i], texts[i + 1]);
    return result;
}

}  // namespace flutebook::web
