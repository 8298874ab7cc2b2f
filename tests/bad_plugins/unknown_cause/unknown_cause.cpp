// Lays out the run well, and sheds its setup sheets under a cause of its own.
#include <array>

#include "tests/bad_plugins/spoilt_run.hpp"

namespace {

std::array<flutebook_loss, 8> causes = [] {
    std::array<flutebook_loss, 8> result{};
    for (std::size_t i = 0; i < result.size(); ++i)
        result[i] = static_cast<const flutebook_loss*>(good_run.losses.at)[i];
    result[spoilt::place_of_cause("setup")].cause = "make-ready";
    return result;
}();

flutebook_model with_causes() {
    flutebook_model result = good_run;
    result.losses.at = causes.data();
    return result;
}

}  // namespace

extern "C" const flutebook_model flutebook_plugin = with_causes();
