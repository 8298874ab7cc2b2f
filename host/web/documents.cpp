#include "host/web/documents.hpp"

#include <fmt/format.h>
#include <sys/mman.h>
#include <unistd.h>

#include <cerrno>
#include <fstream>
#include <sstream>
#include <system_error>
#include <utility>
#include <vector>

#include "host/handover/texts.hpp"
#include "ledger/values/error.hpp"
#include "ledger/values/sha256.hpp"

namespace flutebook::web {

namespace {

constexpr std::size_t most_bytes = std::size_t{64} * 1024 * 1024;

std::string digest_of(const SentDocument& document) {
    return ledger::to_hex(ledger::sha256(document.name + '\n' + document.text));
}

[[noreturn]] void fail() {
    throw LedgerError(LedgerError::Kind::unfit,
                      fmt::format("document: no room to read it: {}; make room and send it again",
                                  std::generic_category().message(errno)));
}

}  // namespace

std::string Documents::keep(SentDocument document) {
    std::string digest = digest_of(document);
    const std::lock_guard lock(mutex_);
    for (const KnownDocument& kept : kept_)
        if (kept.digest == digest) return digest;
    bytes_ += document.text.size();
    kept_.push_back({digest, std::move(document)});
    while (bytes_ > most_bytes && kept_.size() > 1) {
        bytes_ -= kept_.front().document.text.size();
        kept_.pop_front();
    }
    return digest;
}

std::optional<SentDocument> Documents::find(const std::string& digest) const {
    const std::lock_guard lock(mutex_);
    for (const KnownDocument& kept : kept_)
        if (kept.digest == digest) return kept.document;
    return std::nullopt;
}

// Name and text in turn, the oldest first.
std::string Documents::in_bytes() const {
    const std::lock_guard lock(mutex_);
    std::vector<std::string> texts;
    for (const KnownDocument& kept : kept_) {
        texts.push_back(kept.document.name);
        texts.push_back(kept.document.text);
    }
    return handover::in_bytes(texts);
}

void Documents::take(const std::string& bytes) {
    std::vector<std::string> texts = handover::texts_of(bytes);
    if (texts.size() % 2 != 0) handover::fail_to_read();
    for (std::size_t i = 0; i < texts.size(); i += 2) keep({std::move(texts[i]), std::move(texts[i + 1])});
}

DocumentFile::DocumentFile(const std::string& text)
    : descriptor_(::memfd_create("document", MFD_CLOEXEC)), path_(fmt::format("/proc/self/fd/{}", descriptor_)) {
    if (descriptor_ < 0) fail();
    for (std::size_t written = 0; written < text.size();) {
        const ssize_t part = ::write(descriptor_, text.data() + written, text.size() - written);
        if (part < 0 && errno == EINTR) continue;
        if (part < 0) {
            ::close(descriptor_);
            fail();
        }
        written += static_cast<std::size_t>(part);
    }
}

DocumentFile::~DocumentFile() {
    ::close(descriptor_);
}

std::string DocumentFile::text() const {
    std::ifstream stream(path_, std::ios::binary);
    std::ostringstream text;
    text << stream.rdbuf();
    return text.str();
}

}  // namespace flutebook::web
