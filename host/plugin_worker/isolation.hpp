// Models that run in processes of their own: their code is never loaded into this process, not even for a description.
//
// A model is described by one short-lived process for each start of the program, and evaluated by one worker for each
// thread. A worker may do what a plugin may do during its check: read, compute, and use some memory.
#pragma once

#include <chrono>
#include <string>

#include "host/contract/evaluator.hpp"
#include "host/plugin_worker/child_process_main.hpp"

namespace flutebook::plugin_worker {

/// Any thread.
class ProcessLoader : public contract::IsolatedLoader {
public:
    /// `program` is the host's program, or another that calls run_inside(). A block may take as long as `patience`.
    explicit ProcessLoader(std::string program, std::chrono::milliseconds patience = deadline)
        : program_(std::move(program)), patience_(patience) {}

    /// The model without an evaluator. Throws ModelError as open() does.
    [[nodiscard]] contract::Model describe(const contract::PluginFile& file) const;

    [[nodiscard]] contract::Model open(contract::PluginFile file) override;

private:
    const std::string program_;
    const std::chrono::milliseconds patience_;
};

}  // namespace flutebook::plugin_worker
