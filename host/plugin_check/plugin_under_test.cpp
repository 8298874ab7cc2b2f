#include "host/plugin_check/plugin_under_test.hpp"

#include <chrono>

#include "host/base/errors.hpp"
#include "host/contract/description.hpp"
#include "host/sandbox/confine.hpp"
#include "host/sandbox/guarded.hpp"

namespace flutebook::plugin_check {

const contract::Library& PluginUnderTest::library() {
    if (library_) return *library_;
    static const std::string phase = "it was loaded";
    report_.say("phase", phase);
    const sandbox::CurrentTask doing(phase);
    const sandbox::ProcessState before = sandbox::process_state();
    const auto begun = std::chrono::steady_clock::now();
    library_ = contract::load_library(file_);
    const double ms = std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begun).count();
    loading_ = {ms, before, sandbox::process_state()};
    // What it does from here on needs no file.
    sandbox::forbid_files();
    return *library_;
}

const contract::Model& PluginUnderTest::model() {
    if (model_) return *model_;
    const contract::Library& loaded = library();
    if (loaded.model == nullptr)
        throw ModelError(file_.where() +
                         ": exports no symbol flutebook_plugin; end the source with FLUTEBOOK_MODEL(...)");
    static const std::string phase = "its description was read";
    report_.say("phase", phase);
    const sandbox::CurrentTask doing(phase);
    model_ = contract::describe(*loaded.model, file_.name(), file_.id());
    return *model_;
}

const std::vector<TrialRow>& PluginUnderTest::rows() {
    if (!rows_) rows_ = make_rows(model(), options_.seed, options_.orders, options_.settings);
    return *rows_;
}

}  // namespace flutebook::plugin_check
