// Reads back what a page shows: one of its parts, the rows of its tables, and whether printed amounts add up.
#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <string>
#include <vector>

namespace flutebook::fixture {

/// The section with this id, with what stands in it.
[[nodiscard]] std::string part(const std::string& page, const std::string& id);

/// Of a table whose rows begin with a head: its cells as texts, by the head's text without its unit. The first of a
/// name counts.
[[nodiscard]] std::map<std::string, std::vector<std::string>> rows_of(const std::string& part);

/// "1 234.5000" as ten-thousandths: 12345000.
[[nodiscard]] std::int64_t units(const std::string& amount);

[[nodiscard]] std::string without_entities(std::string text);

/// Of a cost sheet: its last column.
struct PrintedSums {
    std::size_t classes = 0;
    std::int64_t total = 0;  // ten-thousandths
    std::vector<std::string> faults;
};
[[nodiscard]] PrintedSums sums_of(const std::string& cost_part);

}  // namespace flutebook::fixture
