#include "host/services/plugins/child_process_main.hpp"

#include "host/plugin_check/child_process_main.hpp"
#include "host/plugin_worker/child_process_main.hpp"

namespace flutebook::services {

std::optional<int> run_inside(int count, const char* const* words) {
    if (const auto answer = plugin_check::run_trial(count, words)) return answer;
    return plugin_worker::run_inside(count, words);
}

}  // namespace flutebook::services
