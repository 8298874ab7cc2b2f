#include "host/plugin_worker/isolation.hpp"

#include <fmt/format.h>

#include <memory>
#include <optional>
#include <system_error>
#include <vector>

#include "host/base/errors.hpp"
#include "host/plugin_worker/child_process_main.hpp"
#include "host/plugin_worker/model_serialization.hpp"
#include "host/plugin_worker/worker_pool.hpp"
#include "host/sandbox/child.hpp"
#include "host/sandbox/watch.hpp"

namespace flutebook::plugin_worker {
namespace {

using contract::Model;
using contract::PluginFile;

constexpr sandbox::ChildLimits limits{deadline, deadline, std::size_t{512} << 20};
// No valid description has more fields; a faulty process must not fill the memory of this one.
constexpr std::size_t most_fields = 100000;

// The report on one model.
struct DescribedReply {
    std::vector<std::string> fields;
    std::optional<std::string> refusal;
    bool is_complete = false;

    void take(const sandbox::ChildMessage& message) {
        if (message.word == field_word && fields.size() < most_fields) fields.push_back(message.text);
        if (message.word == refused_word && !refusal) refusal = message.text;
        if (message.word == end_word) is_complete = true;
    }
};

[[noreturn]] void refuse(const PluginFile& file, const std::string& what) {
    throw ModelError(fmt::format("{}: {} while it was described; ask its author, or remove it from plugins.yaml",
                                 file.where(), what));
}

DescribedReply request_description(const std::string& program, const PluginFile& file) {
    DescribedReply reply;
    const auto [stopped, ended, printed] = sandbox::run_watched(
        program, words_to_describe(file.name()), file.descriptor(),
        [&](const sandbox::ChildMessage& message) { reply.take(message); }, limits);
    if (stopped == sandbox::Stopped::false_report) refuse(file, "wrote into the report of its process");
    if (stopped == sandbox::Stopped::out_of_time)
        refuse(file, fmt::format("did not come back within {} s", static_cast<double>(deadline.count()) / 1000));
    if (stopped == sandbox::Stopped::out_of_memory)
        refuse(file, fmt::format("took more than {} MB", limits.resident_bytes >> 20U));
    if (!reply.is_complete) refuse(file, sandbox::ending(ended));
    return reply;
}

Model described(const std::string& program, const PluginFile& file) {
    try {
        DescribedReply reply = request_description(program, file);
        if (reply.refusal) throw ModelError(*reply.refusal);
        if (auto model = model_from(std::move(reply.fields), file.name(), file.id())) return *std::move(model);
        refuse(file, "sent no valid description");
    } catch (const std::system_error& error) {
        throw ModelError(fmt::format("{}: no process could be started for it: {}; allow the program to start processes",
                                     file.where(), error.what()));
    }
}

}  // namespace

Model ProcessLoader::describe(const PluginFile& file) const {
    return described(program_, file);
}

Model ProcessLoader::open(PluginFile file) {
    Model result = describe(file);
    result.elsewhere = std::make_shared<WorkerPool>(program_, std::move(file), result, patience_);
    return result;
}

}  // namespace flutebook::plugin_worker
