// The rows that cannot be posted, gathered over all files so that a person mends everything in one go.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace flutebook::production {

/// Memory is bounded: beyond `most_listed` lines they are counted. One thread at a time.
class Refusals {
public:
    static constexpr std::size_t most_listed = 1000;

    /// `file:line: column: text`; a line 0 and an empty column are left out.
    void add(const std::string& file, std::int64_t line, std::string_view column, const std::string& text);

    [[nodiscard]] bool any() const { return count_ > 0; }

    /// Throws InputError (request) with every sentence, in their order, if there is any.
    void throw_if_any() const;

private:
    std::vector<std::string> listed_;
    std::size_t count_ = 0;
};

}  // namespace flutebook::production
