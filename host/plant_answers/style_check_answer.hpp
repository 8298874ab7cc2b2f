// The answer of a check of box styles: each is drawn and folded at several sizes on every flute, and what was found.
// Plain values.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "host/blanks/proof.hpp"

namespace flutebook::plant_answers {

struct StyleCheckOptions {
    std::string code;              // empty: every style
    std::size_t random_boxes = 0;  // on each flute, besides the named sizes
    std::uint64_t seed = 1;
    blanks::SizeBounds bounds = blanks::SizeBounds::plant;
};

/// One size on one flute.
struct StyleTrial {
    std::string flutes;
    double caliper_mm;
    std::array<double, 3> inside_mm;  // L, B, H that were asked for
    std::string refusal;              // why the style cannot be drawn so; empty: it was
    blanks::FoldingProof proof;

    [[nodiscard]] bool folds() const { return refusal.empty() && proof.holds(); }
};

struct CheckedStyle {
    std::string code, title, note;
    bool is_folded;                       // a sheet has nothing to fold
    std::vector<StyleTrial> trials;       // the named sizes, flute by flute
    std::size_t random_boxes = 0;         // how many were tried on all flutes
    std::size_t refused_boxes = 0;        // of which the style refuses so many
    std::vector<StyleTrial> wrong_boxes;  // and these do not fold

    /// Drawn at one size at least, and folds at every size at which it is drawn.
    [[nodiscard]] bool holds() const {
        const auto is_wrong = [](const StyleTrial& trial) { return trial.refusal.empty() && !trial.proof.holds(); };
        const auto is_right = [](const StyleTrial& trial) { return trial.folds(); };
        return wrong_boxes.empty() && std::none_of(trials.begin(), trials.end(), is_wrong) &&
               std::any_of(trials.begin(), trials.end(), is_right);
    }
};

struct StyleCheck {
    std::vector<CheckedStyle> styles;

    [[nodiscard]] bool holds() const {
        return std::all_of(styles.begin(), styles.end(), [](const CheckedStyle& style) { return style.holds(); });
    }
};

}  // namespace flutebook::plant_answers
