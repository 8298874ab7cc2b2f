#include "host/sandbox/one_processor.hpp"

#include <cstddef>

namespace flutebook::sandbox {

OneProcessor::OneProcessor(pid_t other, int& where) {
    const int here = ::sched_getcpu();
    if (here < 0 || here >= CPU_SETSIZE || ::sched_getaffinity(0, sizeof before_, &before_) != 0) return;
    cpu_set_t one;
    CPU_ZERO(&one);
    CPU_SET(static_cast<std::size_t>(here), &one);
    if (where != here) {
        if (::sched_setaffinity(other, sizeof one, &one) != 0) return;
        where = here;
    }
    is_held_ = ::sched_setaffinity(0, sizeof one, &one) == 0;
}

OneProcessor::~OneProcessor() {
    if (is_held_) ::sched_setaffinity(0, sizeof before_, &before_);
}

}  // namespace flutebook::sandbox
