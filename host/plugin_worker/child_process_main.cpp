#include "host/plugin_worker/child_process_main.hpp"

#include <sys/syscall.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdlib>
#include <limits>
#include <string_view>

#include "host/base/errors.hpp"
#include "host/contract/call.hpp"
#include "host/contract/description.hpp"
#include "host/contract/library.hpp"
#include "host/fields/units.hpp"
#include "host/plugin_worker/block_layout.hpp"
#include "host/plugin_worker/model_serialization.hpp"
#include "host/sandbox/child.hpp"
#include "host/sandbox/confine.hpp"
#include "host/sandbox/report.hpp"
#include "host/sandbox/shared_memory.hpp"

namespace flutebook::plugin_worker {
namespace {

constexpr const char* describe_word = "inner:describe";
constexpr const char* work_word = "inner:work";
constexpr int channel_descriptor = 3;
constexpr int file_descriptor = 4;
constexpr unsigned first_foreign_descriptor = 5;
enum ChildArgument : int { program, inner, file_name, bytes };

using Evaluate = std::uint32_t (*)(const flutebook_block*);

// To be called before any code of the plugin runs.
void confine() {
    sandbox::end_with_parent();
    sandbox::limit_resources();
    // Every other descriptor that the host had open, above all the host's output.
    ::syscall(SYS_close_range, first_foreign_descriptor, ~0U, 0U);
    sandbox::forbid_calls();
}

void describe(const std::string& name, const sandbox::ChildReport& report) {
    try {
        const auto file = contract::PluginFile::handed_over(name, file_descriptor);
        const contract::Model model = contract::describe(contract::load_plugin(file), file.name(), file.id());
        for (const std::string& field : fields_of(model)) report.say(field_word, field);
    } catch (const ModelError& error) {
        report.say(refused_word, error.what());
    }
    report.say(end_word);
}

// Evaluates the host's blocks, with pointers of this process to their columns.
class WorkerLoop {
public:
    explicit WorkerLoop(std::byte* memory)
        : memory_(reinterpret_cast<double*>(memory)), header_(*reinterpret_cast<BlockHeader*>(memory)) {}

    [[noreturn]] void work(Evaluate evaluate) {
        std::uint32_t number = ready;
        header_.answered.set(number);
        while (true) {
            ++number;
            while (!header_.asked.sleep_for(number, std::chrono::hours{1})) {
            }
            if (layout_ != header_.layout) read_layout();
            begin_results();
            write_error(contract::call(evaluate, block_).value_or(""));
            header_.answered.set(number);
        }
    }

private:
    void read_layout() {
        layout_ = header_.layout;
        const ColumnExtent* next = table(header_);
        for (std::size_t list = 0; list < lists; ++list) {
            columns_[list].assign(next, next + header_.names[list]);
            next += header_.names[list];
            pointers_[list].clear();
            for (const ColumnExtent& column_extent : columns_[list])
                pointers_[list].push_back(memory_ + column_extent.first);
        }
        const auto of = [&](BlockList list) { return pointers_[static_cast<std::size_t>(list)].data(); };
        block_ = {sizeof(flutebook_block),
                  0,
                  header_.plies,
                  header_.steps,
                  static_cast<std::size_t>(header_.pitch),
                  of(BlockList::needs),
                  of(BlockList::settings),
                  of(BlockList::provides),
                  of(BlockList::quantities),
                  of(BlockList::rates),
                  of(BlockList::losses),
                  reinterpret_cast<std::uint32_t*>(memory_ + header_.refused)};
    }

    void begin_results() {
        block_.rows = header_.rows;
        fill(BlockList::provides, std::numeric_limits<double>::quiet_NaN());
        fill(BlockList::quantities, 0);
        fill(BlockList::rates, 0);
        fill(BlockList::losses, 0);
        std::fill_n(block_.refused, block_.rows, 0U);
    }

    void fill(BlockList list, double value) {
        for (const ColumnExtent& column_extent : columns_[static_cast<std::size_t>(list)])
            for (std::size_t i = 0; i < column_extent.extent; ++i)
                std::fill_n(memory_ + column_extent.first + i * block_.pitch, block_.rows, value);
    }

    void write_error(const std::string& text) {
        const std::size_t length = std::min(text.size(), header_.error.size() - 1);
        std::copy_n(text.begin(), length, header_.error.begin());
        header_.error[length] = '\0';
    }

    double* memory_;
    BlockHeader& header_;
    std::uint32_t layout_ = 0;  // none
    std::array<std::vector<ColumnExtent>, lists> columns_;
    std::array<std::vector<double*>, lists> pointers_;
    flutebook_block block_{};
};

}  // namespace

std::vector<std::string> words_to_describe(const std::string& file) {
    return {describe_word, file};
}

std::vector<std::string> words_to_work(const std::string& file, std::size_t size) {
    return {work_word, file, std::to_string(size)};
}

std::optional<int> run_inside(int count, const char* const* words) {
    if (count <= ChildArgument::file_name) return std::nullopt;
    const std::string_view task = words[ChildArgument::inner];
    if (task == describe_word) {
        static_cast<void>(fields::is_unit_of_library("m"));  // reads its tables before files can no longer be opened
        const sandbox::ChildReport report(channel_descriptor);
        confine();
        describe(words[ChildArgument::file_name], report);
        // No destructors: they could run code of the plugin.
        ::_exit(0);
    }
    if (task == work_word && count > ChildArgument::bytes) {
        confine();
        const sandbox::SharedMemory memory(channel_descriptor, std::strtoull(words[ChildArgument::bytes], nullptr, 10));
        const auto file = contract::PluginFile::handed_over(words[ChildArgument::file_name], file_descriptor);
        const flutebook_model& model = contract::load_plugin(file);
        sandbox::forbid_files();
        WorkerLoop(memory.at()).work(model.evaluate);
    }
    return std::nullopt;
}

}  // namespace flutebook::plugin_worker
