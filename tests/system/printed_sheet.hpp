// Reads printed cost sheets as somebody with a pencil would, and does every sum again.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace flutebook::fixture {

/// The numbers that stand by themselves in a line; two spaces part them, a single one parts thousands.
[[nodiscard]] std::vector<double> numbers_in(const std::string& line);

[[nodiscard]] std::size_t sheets_on(const std::string& page);

/// What does not add up on a page of cost sheets, to the last place printed, and lines that leave the page's 100
/// columns or end in a space: each with its line.
[[nodiscard]] std::vector<std::string> faults_on(const std::string& page);

}  // namespace flutebook::fixture
