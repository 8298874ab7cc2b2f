// One process that evaluates one model, and the memory that it shares with this process.
#pragma once

#include <chrono>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>

#include <flutebook/plugin.h>

#include "host/contract/evaluator.hpp"
#include "host/contract/plugin_file.hpp"
#include "host/plugin_worker/block_layout.hpp"
#include "host/plugin_worker/child_process_main.hpp"
#include "host/sandbox/child.hpp"
#include "host/sandbox/shared_memory.hpp"

namespace flutebook::plugin_worker {

/// The process is killed and waited for when this goes out of scope. One thread at a time. After it has lost a block it
/// must not be used again.
class WorkerProcess {
public:
    /// Starts `program` and does not wait for it. Throws std::system_error where it cannot be started.
    WorkerProcess(const std::string& program, const contract::PluginFile& file, std::size_t bytes);

    /// The size of the shared memory.
    [[nodiscard]] std::size_t bytes() const { return memory_.bytes(); }

    [[nodiscard]] bool is_alive() const { return !child_.ended(); }

    /// As contract::Evaluator does. bytes() must be at least NameAxes::bytes_for() of the block. Waits as long as
    /// `patience`.
    [[nodiscard]] std::optional<contract::Failure> evaluate(const NameAxes& names, const flutebook_block& block,
                                                            contract::RowSpan rows, std::chrono::milliseconds patience);

private:
    [[nodiscard]] std::optional<contract::Failure> ask(std::chrono::milliseconds patience);
    [[nodiscard]] std::optional<contract::Failure> wait_for(std::uint32_t number, std::chrono::milliseconds patience);
    [[nodiscard]] std::optional<contract::Failure> reported_error() const;

    sandbox::SharedMemory memory_;
    BlockHeader& header_;
    sandbox::Child child_;
    std::optional<BlockLayout> layout_;
    int processor_ = -1;         // that the worker was moved to last
    std::uint32_t layouts_ = 0;  // so far
    std::uint32_t number_ = 0;   // of the last block
};

}  // namespace flutebook::plugin_worker
