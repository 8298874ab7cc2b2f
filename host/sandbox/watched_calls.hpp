// Records the library functions that code under test must not call.
//
// Every library of the process, except the program itself, calls functions of other libraries through a table of
// addresses. In those tables the addresses of the watched functions are replaced by functions of ours, which record the
// call and then make it. So an allocation is recorded wherever the code makes it, in the standard library or on another
// thread, also when it is freed again. A function that is looked up by name at run time, or a direct system call, is
// not recorded.
#pragma once

#include <cstddef>

namespace flutebook::sandbox {

/// Starts recording, permanently: only for a child. To be called after the library has been loaded.
void watch_calls();

/// The watched functions that one thread called between begin() and end(). At most one object at a time on a thread.
class CallNotes {
public:
    void begin();
    void end();

    /// The first function that allocated or freed memory: "malloc"; null where none did.
    [[nodiscard]] const char* allocation() const { return allocation_; }
    /// The first function that used a clock, a lock, a file, the environment, random numbers or a thread:
    /// "clock_gettime"; null where none did.
    [[nodiscard]] const char* outside_call() const { return outside_call_; }

    /// For the functions that replace the watched ones.
    void take(const void* function);

private:
    const char* allocation_ = nullptr;
    const char* outside_call_ = nullptr;
};

}  // namespace flutebook::sandbox
