// Lays out the run well, and sheds its setup sheets under a cause of its own.
#include <array>

#include "tests/bad_plugins/spoilt_run.hpp"

namespace {

std::array<flutebook_loss, 8> causes = [] {
    std::array<flutebook_loss, 8> made{};
    for (std::size_t i = 0; i < made.size(); ++i) made[i] = static_cast<const flutebook_loss*>(good_run.losses.at)[i];
    made[spoilt::place_of_cause("setup")].cause = "make-ready";
    return made;
}();

flutebook_model with_causes() {
    flutebook_model made = good_run;
    made.losses.at = causes.data();
    return made;
}

}  // namespace

extern "C" const flutebook_model flutebook_plugin = with_causes();
