// How a quote's number is written: Q000001.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

namespace flutebook::ledger {

[[nodiscard]] std::string quote_number(std::int64_t number);
/// Nothing where the text is not how a number is written.
[[nodiscard]] std::optional<std::int64_t> parse_quote_number(const std::string& text);

}  // namespace flutebook::ledger
