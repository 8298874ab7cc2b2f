// Models that work in processes of their own: nothing of them is ever mapped into this one, not even to be described.
//
// Describing takes one short-lived process for each model and start of the program; evaluating, a worker for each
// thread that asks. What a worker may do is what a plugin on trial may: read, compute, and take some memory.
#pragma once

#include <chrono>
#include <string>

#include "host/contract/evaluator.hpp"
#include "host/plugin_worker/child_process_main.hpp"

namespace flutebook::plugin_worker {

/// Any thread.
class ProcessLoader : public contract::IsolatedLoader {
public:
    /// `program` is the host's own, or another that has its inner words. A block may take as long as `patience`.
    explicit ProcessLoader(std::string program, std::chrono::milliseconds patience = deadline)
        : program_(std::move(program)), patience_(patience) {}

    [[nodiscard]] contract::Model open(contract::PluginFile file) override;

private:
    const std::string program_;
    const std::chrono::milliseconds patience_;
};

}  // namespace flutebook::plugin_worker
