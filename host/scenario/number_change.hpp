// A number that is to differ, as a person asks for it: `papers.TL125.price=+5%`, `energy.power_price=0.19`.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>

namespace flutebook::scenario {

struct NumberChange {
    std::string asked;              // the whole text, by which messages name it
    std::string path;               // what stands before the sign
    std::optional<double> percent;  // of what is there: 5 of `+5%`; nothing where a value takes its place
    std::string value;              // as it was written, with its unit if it has one

    /// What messages call it, and where its value stands.
    [[nodiscard]] std::string label() const { return "--with " + asked; }
};

/// Reads NAME=VALUE, NAME=+N% or NAME=-N%; else what is wrong with the text, to follow its name in a message.
[[nodiscard]] std::variant<NumberChange, std::string> read_change(const std::string& text);

/// A number as files of a plant have it: what follows the digits is its unit.
struct WrittenNumber {
    double value;
    std::string unit;  // with the space before it; empty where there is none
};

/// A decimal, or inches read off a ruler: `15 1/4 in`. Nothing of a word or a day.
[[nodiscard]] std::optional<WrittenNumber> written_number(std::string_view text);

/// The text of a number after a change by so many per cent. 0 % leaves it as it is.
[[nodiscard]] std::string moved_text(const WrittenNumber& number, double percent);

}  // namespace flutebook::scenario
