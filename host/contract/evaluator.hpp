// A model that is evaluated outside this process. The engine asks for one where the plant isolates the model; the
// engine does not know how this is done, nor how a process ends.
#pragma once

#include <cstddef>
#include <optional>
#include <string>

#include <flutebook/plugin.h>

#include "host/contract/model.hpp"
#include "host/contract/plugin_file.hpp"

namespace flutebook::contract {

/// Rows of a block that lie one after another.
struct RowSpan {
    std::size_t first, count;
};

/// Why a block has no results.
struct Failure {
    /// Answered: the model came back, and what it did is said as if it worked here. Lost: nothing came back at all.
    enum class Kind { answered, lost };
    Kind kind;
    std::string text;  // goes on after the model's name: "crashed (SIGSEGV)"
};

/// Evaluates the blocks of one model. Any thread, several at once.
class Evaluator {
public:
    Evaluator() = default;
    Evaluator(const Evaluator&) = delete;
    Evaluator& operator=(const Evaluator&) = delete;
    virtual ~Evaluator() = default;

    /// Writes all results of these rows where the block points to, the same bits as the model's own function would;
    /// what stood there before is not read. What is written is no more to be believed than what that function writes.
    /// Rows may be asked for again after a failure.
    [[nodiscard]] virtual std::optional<Failure> evaluate(const flutebook_block& block, RowSpan rows) = 0;
};

/// Opens plugins without letting any of their code into this process.
class IsolatedLoader {
public:
    IsolatedLoader() = default;
    IsolatedLoader(const IsolatedLoader&) = delete;
    IsolatedLoader& operator=(const IsolatedLoader&) = delete;
    virtual ~IsolatedLoader() = default;

    /// The model in the file, with an evaluator. Throws ModelError as if it were opened here.
    [[nodiscard]] virtual Model open(PluginFile file) = 0;
};

}  // namespace flutebook::contract
