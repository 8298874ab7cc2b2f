// The sums of a style worked out at a size, and how a size is refused: each refusal names the style and the place of
// what does not fit.
#pragma once

#include <string>

#include "host/blanks/flat.hpp"
#include "host/fields/sum.hpp"

namespace flutebook::blanks {

/// A style's names at a size. `style` and `size` outlive it. Copied where a piece adds its own.
class StyleValues {
public:
    /// With what the style asks for. Throws InputError (request) where a measure is out of its range.
    StyleValues(const box_styles::Style& style, const StyleSize& size);

    /// Adds a piece's `let`.
    void add(const std::vector<box_styles::NamedSum>& sums);
    void set(std::string_view name, double value) { values_.set(name, value); }

    /// All throw InputError (request) where the sum has no such value.
    [[nodiscard]] double number(const box_styles::Sum& sum) const;
    [[nodiscard]] double length(const box_styles::Sum& sum) const;           // at most box_styles::longest_length_mm
    [[nodiscard]] double positive_length(const box_styles::Sum& sum) const;  // and at least the shortest
    /// A whole number from 0 to `most`.
    [[nodiscard]] double count(const box_styles::Sum& sum, double most) const;

    /// "WHERE: WHAT; style `CODE`, PLACE".
    [[noreturn]] void refuse(const base::Place& place, const std::string& what) const;

    /// What to change where one of the board's allowances is to blame: its name, its flutes and its place.
    [[nodiscard]] std::string allowance_words(const char* name) const;

    /// Throws where a requirement does not hold.
    void check_requirements() const;

private:
    void add_allowances();
    void add_asks();

    const box_styles::Style& style_;
    const StyleSize& size_;
    fields::NamedValues values_;
};

}  // namespace flutebook::blanks
