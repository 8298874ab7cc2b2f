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
#include "host/plant/units.hpp"
#include "host/plugin_worker/block_layout.hpp"
#include "host/plugin_worker/model_serialization.hpp"
#include "host/sandbox/child.hpp"
#include "host/sandbox/confine.hpp"
#include "host/sandbox/shared_memory.hpp"
#include "host/sandbox/watch.hpp"

namespace flutebook::plugin_worker {
namespace {

constexpr const char* describe_word = "inner:describe";
constexpr const char* work_word = "inner:work";
constexpr int own_descriptor = 3;
constexpr int file_descriptor = 4;
constexpr unsigned first_foreign_descriptor = 5;
enum Word : int { program, inner, file_name, bytes };

using Evaluate = std::uint32_t (*)(const flutebook_block*);

// Nothing of the plugin has run before this.
void confine() {
    sandbox::end_with_parent();
    sandbox::limit_resources();
    // What the host had open and did not mark, above all what it writes its answers to.
    ::syscall(SYS_close_range, first_foreign_descriptor, ~0U, 0U);
    sandbox::forbid_calls();
}

void describe(const std::string& name) {
    const sandbox::ChildReport report(own_descriptor);
    try {
        const auto file = contract::PluginFile::handed_over(name, file_descriptor);
        const contract::Model model = contract::describe(contract::load_plugin(file), file.name(), file.id());
        for (const std::string& field : fields_of(model)) report.say(field_word, field);
    } catch (const ModelError& error) {
        report.say(refused_word, error.what());
    }
    report.say(end_word);
}

// The block that the host asks about, in this process's own pointers.
class WorkerLoop {
public:
    explicit WorkerLoop(std::byte* memory)
        : memory_(reinterpret_cast<double*>(memory)), slate_(*reinterpret_cast<BlockHeader*>(memory)) {}

    [[noreturn]] void work(Evaluate evaluate) {
        std::uint32_t number = ready;
        slate_.answered.set(number);
        while (true) {
            ++number;
            while (!slate_.asked.sleep_for(number, std::chrono::hours{1})) {
            }
            if (layout_ != slate_.layout) point();
            begin_results();
            say(contract::call(evaluate, block_).value_or(""));
            slate_.answered.set(number);
        }
    }

private:
    void point() {
        layout_ = slate_.layout;
        const ColumnExtent* next = table(slate_);
        for (std::size_t list = 0; list < lists; ++list) {
            columns_[list].assign(next, next + slate_.names[list]);
            next += slate_.names[list];
            pointers_[list].clear();
            for (const ColumnExtent& column_extent : columns_[list])
                pointers_[list].push_back(memory_ + column_extent.first);
        }
        const auto of = [&](List list) { return pointers_[static_cast<std::size_t>(list)].data(); };
        block_ = {sizeof(flutebook_block),
                  0,
                  slate_.plies,
                  slate_.steps,
                  static_cast<std::size_t>(slate_.pitch),
                  of(List::needs),
                  of(List::settings),
                  of(List::provides),
                  of(List::quantities),
                  of(List::rates),
                  of(List::losses),
                  reinterpret_cast<std::uint32_t*>(memory_ + slate_.refused)};
    }

    void begin_results() {
        block_.rows = slate_.rows;
        fill(List::provides, std::numeric_limits<double>::quiet_NaN());
        fill(List::quantities, 0);
        fill(List::rates, 0);
        fill(List::losses, 0);
        std::fill_n(block_.refused, block_.rows, 0U);
    }

    void fill(List list, double value) {
        for (const ColumnExtent& column_extent : columns_[static_cast<std::size_t>(list)])
            for (std::size_t i = 0; i < column_extent.extent; ++i)
                std::fill_n(memory_ + column_extent.first + i * block_.pitch, block_.rows, value);
    }

    void say(const std::string& wrong) {
        const std::size_t length = std::min(wrong.size(), slate_.wrong.size() - 1);
        std::copy_n(wrong.begin(), length, slate_.wrong.begin());
        slate_.wrong[length] = '\0';
    }

    double* memory_;
    BlockHeader& slate_;
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
    if (count <= Word::file_name) return std::nullopt;
    const std::string_view asked = words[Word::inner];
    if (asked == describe_word) {
        static_cast<void>(plant::is_unit("m"));  // reads its tables while files are still free to read
        confine();
        describe(words[Word::file_name]);
        // Nothing of the plugin's own is to be run any more.
        ::_exit(0);
    }
    if (asked == work_word && count > Word::bytes) {
        confine();
        const sandbox::SharedMemory memory(own_descriptor, std::strtoull(words[Word::bytes], nullptr, 10));
        const auto file = contract::PluginFile::handed_over(words[Word::file_name], file_descriptor);
        WorkerLoop(memory.at()).work(contract::load_plugin(file).evaluate);
    }
    return std::nullopt;
}

}  // namespace flutebook::plugin_worker
