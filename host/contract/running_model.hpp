// Which model's code runs in this process, so that a fatal signal can name it.
//
// A crash or a hang in a model cannot be undone once it has happened in the host's own process; but the person must
// learn whose it was.
#pragma once

namespace flutebook::contract {

/// While it lives, this thread runs code of a model. The texts must outlive it. At most one on a thread counts, the
/// innermost.
class RunningModel {
public:
    /// `doing` completes "crashed (SIGSEGV) while": "it was loaded".
    RunningModel(const char* file, const char* id, const char* doing);
    ~RunningModel();
    RunningModel(const RunningModel&) = delete;
    RunningModel& operator=(const RunningModel&) = delete;

    // For the signal handler.
    const char *const file, *const id, *const doing;

private:
    const RunningModel* const outer_;
};

/// From now on a signal that ends the process writes one line for the model that raised it, or, for a signal from
/// outside, one for each model that runs. The process then ends with exit code 3 if a model raised the signal, else as
/// the signal ends it. Signals that the process handles already stay as they are.
void name_models_at_fatal_signals();

}  // namespace flutebook::contract
