// What the files of the house must look like, apart from what they include.
#pragma once

#include "tests/house/tree.hpp"

namespace flutebook::house {

/// At the top stand the rooms, the two pages for people and dotfiles, no more and no less.
[[nodiscard]] Faults strangers_at_the_top(const Tree& tree);

/// Nothing that people write is longer than 400 lines.
[[nodiscard]] Faults overlong_files(const Tree& tree);

/// No promise of later work, no silenced check, no test that is switched off or may fail.
[[nodiscard]] Faults marks_left_behind(const Tree& tree);

/// Every .cpp and .c is named in a CMakeLists.txt, or stands in a folder that one builds whole; what is not built is
/// not kept.
[[nodiscard]] Faults unbuilt_sources(const Tree& tree);

/// host/main.cpp stays under 40 lines: it hands over, and catches.
[[nodiscard]] Faults overgrown_main(const Tree& tree);

/// The ledger counts money in whole numbers; only ledger/values/money.* knows how a number becomes one.
[[nodiscard]] Faults money_in_fractions(const Tree& tree);

/// README.md has a heading on cautions, with something under it.
[[nodiscard]] Faults missing_cautions(const Tree& tree);

/// Each way to be wrong in tests/bad_plugins/ is named by a test.
[[nodiscard]] Faults untried_bad_plugins(const Tree& tree);

/// Code, scripts and the plant's files open with a comment: what, and why. A source with a header of its own has it
/// there.
[[nodiscard]] Faults files_without_a_word(const Tree& tree);

/// No file knows where on some machine it was written.
[[nodiscard]] Faults paths_of_one_machine(const Tree& tree);

}  // namespace flutebook::house
