// The sums of a style while it is read: which names they may use, and whether what should be a length is one.
//
// A length that grows with the square of the lengths it is made of is an area: it is found by working it out for the
// same box a thousand times larger.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "host/box_styles/style.hpp"
#include "host/fields/map_reader.hpp"
#include "host/fields/sum.hpp"

namespace flutebook::box_styles {

/// mm; no blank, cell or flap is longer.
inline constexpr double longest_length_mm = 20000;
/// mm; of a shorter one the two ends cannot be told apart.
inline constexpr double shortest_length_mm = 0.001;

enum class SumUse {
    length,           // of any sign
    positive_length,  // at least the shortest, at most the longest
    number,
};

/// Names that only sums within a cell know.
enum class CellNames { none, width, width_and_depth, cut_out };

/// The names that are known at one point of a style. Copied where a piece adds its own.
class SumScope {
public:
    explicit SumScope(const std::vector<std::string>& allowance_names);

    /// Reads a sum and complains of what is wrong with it. What it complained of is not complained of again.
    [[nodiscard]] Sum read(const fields::Field& field, SumUse use, CellNames cell_names = CellNames::none) const;
    /// The same of a key.
    [[nodiscard]] Sum read_key(const fields::Field& field, SumUse use) const;

    /// Reports an error if the name is invalid or already used.
    void check_new_name(const fields::Field& field) const;
    /// A measure counts as a length where its sums are made of lengths; else it may be a count, and stays as it is
    /// while the box grows.
    void add(const AskedMeasure& measure);
    void add(const NamedSum& sum);

private:
    // The same box at three sizes.
    using Scales = std::array<fields::NamedValues, 3>;

    [[nodiscard]] Sum checked(const fields::Field& field, const std::string& text, SumUse use,
                              CellNames cell_names) const;
    [[nodiscard]] bool knows_names(const fields::Field& field, const std::string& text, CellNames cell_names) const;
    [[nodiscard]] bool uses_lengths(const std::string& text) const;
    void check_size(const fields::Field& field, const std::string& text, SumUse use) const;

    std::vector<std::string> names_;
    std::vector<std::string> lengths_;  // those of names_ that are lengths
    std::vector<Scales> boxes_;
};

}  // namespace flutebook::box_styles
