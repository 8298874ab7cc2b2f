// What a child tells the process that started it: one line after another, each before the step that it names begins, so
// that the last line says where the child died.
//
// Code under test runs in the same process and can write to the same descriptor. So each line begins with a mark that
// follows from its number and from a key: the parent makes the key, and the child keeps it in memory that cannot be
// accessed while other code runs. A mark is valid once. The report goes through a socket, which cannot be opened again
// through /proc to read what was written.
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace flutebook::sandbox {

/// The secret from which the marks of a report follow.
struct ReportKey {
    std::uint64_t first, second;
};

/// Unpredictable. Throws std::system_error where the system gives no random numbers.
[[nodiscard]] ReportKey random_report_key();

/// The mark of the line with this number: SipHash-2-4 of the number (Aumasson and Bernstein, 2012; the
/// constants from memory). Safe in a signal handler.
[[nodiscard]] std::uint64_t mark_of_line(const ReportKey& key, std::uint64_t number);

/// No line and no report is longer: a faulty child must not fill the memory of its parent.
inline constexpr std::size_t longest_line = 4000;
inline constexpr std::size_t longest_report = std::size_t{4} << 20;

/// The child's end. A line that cannot be written is dropped: the parent no longer reads. One thread at a time.
class ChildReport {
public:
    /// Waits for the key, which the parent sends first. Throws std::system_error where it does not come.
    explicit ChildReport(int descriptor);
    ~ChildReport();
    ChildReport(const ChildReport&) = delete;
    ChildReport& operator=(const ChildReport&) = delete;

    /// Writes `word` and `text` as one line. What is no plain text becomes a space or a question mark.
    void say(std::string_view word, std::string_view text = {}) const;

    /// Writes a measured value; the name is one word.
    void say_figure(std::string_view name, double value) const;

    /// Writes the texts as one line, and returns whether it was written. Safe in a signal handler. At most eight texts,
    /// which are plain.
    bool say_at_signal(std::span<const char* const> texts) const;

private:
    struct Secret;
    [[nodiscard]] std::uint64_t next_mark() const;

    int descriptor_;
    Secret* secret_;  // on a page of its own, without access but in next_mark()
};

/// One line of a report.
struct ChildMessage {
    std::string word, text;
};

/// The parent's end: splits the bytes into lines and checks their marks.
class Listener {
public:
    using Take = std::function<void(const ChildMessage&)>;

    /// Without a key lines carry no mark: for a child that runs no code but its own.
    explicit Listener(Take take, std::optional<ReportKey> key = std::nullopt) : take_(std::move(take)), key_(key) {}

    /// False where the bytes are no report: a wrong mark, a line that is too long or no plain text, too many bytes.
    /// Everything after that is ignored.
    [[nodiscard]] bool hear(std::string_view bytes);

private:
    [[nodiscard]] bool take_line();

    Take take_;
    std::optional<ReportKey> key_;
    std::uint64_t number_ = 0;  // of the next line
    std::size_t bytes_ = 0;     // so far
    std::string line_;
    bool is_valid_ = true;
};

}  // namespace flutebook::sandbox
