// The rules of the groups `load` and `description`: what happens to the process when the file is loaded, and what the
// file says of itself.
#pragma once

#include "host/plugin_check/rules.hpp"
#include "host/plugin_check/subject.hpp"
#include "host/sandbox/process_state.hpp"

namespace flutebook::plugin_check {

[[nodiscard]] Wrong try_loading(Subject& subject);
[[nodiscard]] Wrong try_loading_floating_point(Subject& subject);
/// Loading left a part of the process as it was.
template <sandbox::KeptState What>
[[nodiscard]] Wrong try_kept(Subject& subject) {
    const auto changed = sandbox::difference(subject.loading().before, subject.loading().after, What);
    return changed ? Wrong(*changed + " when it was loaded") : std::nullopt;
}
[[nodiscard]] Wrong try_description(Subject& subject);

}  // namespace flutebook::plugin_check
