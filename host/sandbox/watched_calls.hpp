// Calls of the system's libraries that code under test must not make, seen as they are made.
//
// Every library of the process but the program itself finds what it calls through a table of addresses. Those of the
// watched functions are put in the place of ours there, which take note and go on to the real one. So an allocation is
// seen wherever the code makes it, in a string of the standard library or on another thread, and whether it is freed
// again or not. What looks a function up by its name at run time, or asks the kernel itself, is not seen.
#pragma once

#include <cstddef>

namespace flutebook::sandbox {

/// From now on calls are seen, for good: for a child alone. To be called after the library was loaded.
void watch_calls();

/// What one thread called between begin() and end(). One at a time on a thread.
class CallNotes {
public:
    void begin();
    void end();

    /// "malloc"; null where memory was neither taken nor given back.
    [[nodiscard]] const char* allocation() const { return allocation_; }
    /// A clock, a lock, a file, an environment, chance or a thread: "clock_gettime"; null where nothing was asked.
    [[nodiscard]] const char* asked() const { return asked_; }

    /// For the functions that replace the watched ones.
    void take(const void* function);

private:
    const char* allocation_ = nullptr;
    const char* asked_ = nullptr;
};

}  // namespace flutebook::sandbox
