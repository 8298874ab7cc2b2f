// The workers of one model: as many as threads evaluate at once, kept for the next block, replaced when one is lost.
#pragma once

#include <chrono>
#include <cstddef>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

#include "host/contract/evaluator.hpp"
#include "host/contract/plugin_file.hpp"
#include "host/plugin_worker/block_layout.hpp"
#include "host/plugin_worker/worker.hpp"

namespace flutebook::plugin_worker {

/// Starts a worker only when there is a block for it. All workers have ended when this goes out of scope.
class WorkerPool : public contract::Evaluator {
public:
    /// `program` is started for each worker; a block may take as long as `patience`.
    WorkerPool(std::string program, contract::PluginFile file, const contract::Model& model,
               std::chrono::milliseconds patience)
        : program_(std::move(program)), file_(std::move(file)), names_(model), patience_(patience) {}

    [[nodiscard]] std::optional<contract::Failure> evaluate(const flutebook_block& block,
                                                            contract::RowSpan rows) override;

private:
    [[nodiscard]] std::unique_ptr<WorkerProcess> take(std::size_t bytes);
    void give_back(std::unique_ptr<WorkerProcess> worker);

    const std::string program_;
    const contract::PluginFile file_;
    const NameAxes names_;
    const std::chrono::milliseconds patience_;
    std::mutex mutex_;  // protects idle_ only; never held while a model works or a worker starts or ends
    std::vector<std::unique_ptr<WorkerProcess>> idle_;
};

}  // namespace flutebook::plugin_worker
