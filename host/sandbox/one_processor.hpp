// Keeps two processes that take turns on one processor. Neither works while the other does, and data that one wrote is
// still in the cache for the other. The system would spread them over idle processors, and waking an idle processor
// takes longer than most blocks.
#pragma once

#include <sched.h>
#include <sys/types.h>

namespace flutebook::sandbox {

/// While this object lives, the thread that created it and the other process stay on one processor. Afterwards the
/// other process remains there. Where the system does not allow it, nothing changes.
class OneProcessor {
public:
    /// `where` is the processor that `other` was moved to last, -1 at first; the caller stores it.
    OneProcessor(pid_t other, int& where);
    ~OneProcessor();
    OneProcessor(const OneProcessor&) = delete;
    OneProcessor& operator=(const OneProcessor&) = delete;

private:
    cpu_set_t before_{};
    bool is_held_ = false;
};

}  // namespace flutebook::sandbox
