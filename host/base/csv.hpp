// Comma-separated text as people have it, read a line at a time: with or without a byte order mark, ends of line of
// either kind, `,` or `;` between the fields, fields in quotes.
//
// Strict where a guess could change a number: a line that is not well formed is refused as a whole. A record is one
// line, so a file of any length is read in the memory of its longest line, which is bounded.
#pragma once

#include <cstddef>
#include <cstdint>
#include <fstream>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace flutebook::base {

/// One line of a file, counted from 1. Fields are stripped of the spaces around them; they point into the reader and
/// live until its next line is read.
struct CsvLine {
    std::int64_t number = 0;
    std::vector<std::string_view> fields;
    /// Why the line is refused: `found …; expected …`. It has no fields then.
    std::optional<std::string> fault;
    /// The whole line, its quotes undone in place. Where a field stands in it is where it stands in the file.
    std::string_view text{};

    /// Bytes from 1; of an empty field, the line's first.
    [[nodiscard]] int column_of(std::size_t field) const {
        return fields[field].empty() ? 1 : static_cast<int>(fields[field].data() - text.data()) + 1;
    }
};

/// One thread at a time.
class CsvReader {
public:
    static constexpr std::size_t longest_line = std::size_t{64} * 1024;
    static constexpr std::size_t most_fields = 64;

    /// The reader of a plain file, or why it cannot be read.
    [[nodiscard]] static std::variant<CsvReader, std::string> open(const std::string& file);

    /// The next line that holds anything, or null at the end. A line beyond `longest_line`, or one with a NUL, is no
    /// line of a document: it is the last.
    [[nodiscard]] const CsvLine* next();

    /// What stands between the fields. Known once the first line was read.
    [[nodiscard]] char separator() const { return separator_; }

private:
    explicit CsvReader(std::ifstream stream);

    enum class Taken { line, overlong, end };
    [[nodiscard]] Taken take_line();
    [[nodiscard]] bool fill();
    void split();
    struct Quoted {
        std::size_t length;  // of what stood in the quotes, which is now where the opening quote was
        std::size_t next;    // where the line goes on
    };
    [[nodiscard]] std::optional<Quoted> take_quoted(std::size_t opening);

    std::ifstream stream_;
    std::vector<char> buffer_;
    std::size_t begin_ = 0, end_ = 0;  // what of the buffer is not read yet
    std::string text_;                 // the line, its quotes undone in place
    CsvLine line_;
    char separator_ = 0;
    bool is_over_ = false;
};

}  // namespace flutebook::base
