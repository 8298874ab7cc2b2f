// Styles of the library with one thing wrong: what a person may write by mistake. Each must be refused or found by the
// proof; a few that cannot be are kept with the reason.
#pragma once

#include <vector>

namespace flutebook::fixture {

struct WrongStyle {
    const char* code;              // of the library's entry
    const char* from;              // its text, once
    const char* to;                // what stands in its place
    const char* sentence;          // what is wrong
    const char* excuse = nullptr;  // why nobody can find it; null: it is found
};

[[nodiscard]] const std::vector<WrongStyle>& wrong_styles();

}  // namespace flutebook::fixture
