#include "host/desk/inside.hpp"

#include "host/trial/inside.hpp"

namespace flutebook::desk {

std::optional<int> run_inside(int count, const char* const* words) {
    return trial::run_trial(count, words);
}

}  // namespace flutebook::desk
