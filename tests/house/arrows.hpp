// Which room may include what: the arrows of the house, and the one file that each large library is kept in.
#pragma once

#include "tests/house/tree.hpp"

namespace flutebook::house {

/// Includes that run against the arrows, or that name no file of the tree. Plugins and the SDK may use nothing but
/// the standard library besides.
[[nodiscard]] Faults wrong_arrows(const Tree& tree);

/// Files that touch a library which another file is named for.
[[nodiscard]] Faults libraries_out_of_place(const Tree& tree);

}  // namespace flutebook::house
