// A workbook made byte by byte, so that a test can make one that no spreadsheet would.
#pragma once

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

namespace flutebook::fixture {

/// An archive of parts. They are stored as they are, but for one that unpacks to more than it says.
class MadeWorkbook {
public:
    /// With the parts that every workbook has, and a first sheet of these rows (`<row>…</row>`).
    explicit MadeWorkbook(const std::string& rows);

    /// A part of that name is replaced.
    void set(const std::string& part, const std::string& text);
    /// A part that unpacks to blanks, `bytes` of them, and says that they are a thousand.
    void set_bomb(const std::string& part, std::uint64_t bytes);
    /// As if each part were encrypted.
    void set_encrypted() { flags_ = 1; }

    [[nodiscard]] std::string bytes() const;

private:
    struct Part {
        std::string name, packed;
        std::uint32_t unpacked = 0, check = 0;
        std::uint16_t method = 0;  // 0 stored, 8 deflated
    };
    Part& part_of(const std::string& name);

    std::vector<Part> parts_;
    std::uint16_t flags_ = 0;
};

/// A row of texts that stand in their cells, from A on; `row` counts from 1.
[[nodiscard]] std::string inline_row(int row, const std::vector<std::string>& texts);

}  // namespace flutebook::fixture
