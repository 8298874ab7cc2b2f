// One process in which one model works, for as long as it does so well, and the memory that it is fed through.
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

/// The process is killed and waited for when this goes out of scope. One thread at a time. After a block was lost it is
/// of no more use.
class WorkerProcess {
public:
    /// Starts `program` and does not wait for it. Throws std::system_error where it cannot be started.
    WorkerProcess(const std::string& program, const contract::PluginFile& file, std::size_t bytes);

    /// Of shared memory.
    [[nodiscard]] std::size_t bytes() const { return memory_.bytes(); }

    [[nodiscard]] bool is_alive() const { return !child_.ended(); }

    /// As contract::Evaluator does; needs Names::bytes_for the block. Waits for the answer as long as `patience`.
    [[nodiscard]] std::optional<contract::Failure> evaluate(const NameAxes& names, const flutebook_block& block,
                                                            contract::RowSpan rows, std::chrono::milliseconds patience);

private:
    [[nodiscard]] std::optional<contract::Failure> ask(std::chrono::milliseconds patience);
    [[nodiscard]] std::optional<contract::Failure> wait_for(std::uint32_t number, std::chrono::milliseconds patience);
    [[nodiscard]] std::optional<contract::Failure> wrong() const;

    sandbox::SharedMemory memory_;
    BlockHeader& slate_;
    sandbox::Child child_;
    std::optional<BlockLayout> layout_;
    int processor_ = -1;         // where the worker was put last
    std::uint32_t layouts_ = 0;  // so far
    std::uint32_t number_ = 0;   // of the last answer
};

}  // namespace flutebook::plugin_worker
