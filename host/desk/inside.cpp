#include "host/desk/inside.hpp"

#include "host/isolation/inside.hpp"
#include "host/trial/inside.hpp"

namespace flutebook::desk {

std::optional<int> run_inside(int count, const char* const* words) {
    if (const auto answer = trial::run_trial(count, words)) return answer;
    return isolation::run_inside(count, words);
}

}  // namespace flutebook::desk
