// The names that a page shows for the keys of an answer in JSON.
#pragma once

#include <string>

namespace flutebook::reports {

/// Where on the page a figure stands.
enum class FigureKind { way, money, mass, other };

struct FigureName {
    FigureKind kind;
    std::string title;
};

/// Of a key as `answers::Difference::path` spells it: "mass_kg.loss.side-trim", "runners_up[1].cost". A key that
/// has no name here is shown as it is.
[[nodiscard]] FigureName figure_name(const std::string& key);

}  // namespace flutebook::reports
