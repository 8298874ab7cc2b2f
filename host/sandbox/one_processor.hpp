// Two sides that take turns, on one processor: neither has anything to do while the other is at it, and what one wrote
// is still near. Left to itself the system spreads them over idle processors, and waking one of those takes longer than
// most blocks do.
#pragma once

#include <sched.h>
#include <sys/types.h>

namespace flutebook::sandbox {

/// While this lives, the thread that made it stays where it runs, and the other process is there too. Where the system
/// does not allow it, nothing changes. The other process is left there.
class OneProcessor {
public:
    /// `where` is the processor on which `other` was put last, -1 at first; the caller keeps it.
    OneProcessor(pid_t other, int& where);
    ~OneProcessor();
    OneProcessor(const OneProcessor&) = delete;
    OneProcessor& operator=(const OneProcessor&) = delete;

private:
    cpu_set_t before_{};
    bool is_held_ = false;
};

}  // namespace flutebook::sandbox
