// Rounds many random numbers and every tie up to a size by our own rounding and by std::llround, and says whether any
// differs: rounding_proof [COUNT], 1e9 where none is given.
#include <cstdint>
#include <cstdlib>
#include <iostream>

#include "tests/support/rounding_against_library.hpp"

int main(int count, char** words) {
    using namespace flutebook::fixture;
    const std::int64_t numbers = count > 1 ? static_cast<std::int64_t>(std::atof(words[1])) : 1'000'000'000;
    const std::int64_t ties = numbers / 10;
    const auto wrong_random = first_wrong_random(numbers, 2026);
    const auto wrong_tie = first_wrong_tie(ties);
    const auto wrong_power = first_wrong_power();
    std::cout << numbers << " random numbers, " << ties << " ties with their neighbours, all powers of two: ";
    for (const auto& wrong : {wrong_random, wrong_tie, wrong_power})
        if (wrong) {
            std::cout << "rounded differently: " << *wrong << "\n";
            return 1;
        }
    std::cout << "every one as std::llround\n";
    return 0;
}
