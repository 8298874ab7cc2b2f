// Production documents that were sent and shown dry, kept until they are posted: what is posted is the very text that
// was looked at. They are known by the SHA-256 of their name and text.
#pragma once

#include <cstddef>
#include <deque>
#include <mutex>
#include <optional>
#include <string>

namespace flutebook::web {

struct SentDocument {
    std::string name, text;
};

/// Any thread.
class Documents {
public:
    /// Keeps it; its digest. The oldest go where all together are more than 64 MB.
    std::string keep(SentDocument document);
    [[nodiscard]] std::optional<SentDocument> find(const std::string& digest) const;

    /// All of them, for another process of this machine.
    [[nodiscard]] std::string in_bytes() const;
    /// Keeps what another process wrote. Throws std::runtime_error where it is none of ours.
    void take(const std::string& bytes);

private:
    struct KnownDocument {
        std::string digest;
        SentDocument document;
    };
    mutable std::mutex mutex_;
    std::deque<KnownDocument> kept_;
    std::size_t bytes_ = 0;
};

/// A text as a file of the system while this object lives. Throws LedgerError, unfit, where none can be made.
class DocumentFile {
public:
    explicit DocumentFile(const std::string& text);
    DocumentFile(const DocumentFile&) = delete;
    DocumentFile& operator=(const DocumentFile&) = delete;
    ~DocumentFile();

    [[nodiscard]] const std::string& path() const { return path_; }
    /// What it holds now: another may have written to it by its path.
    [[nodiscard]] std::string text() const;

private:
    int descriptor_;
    std::string path_;
};

}  // namespace flutebook::web
