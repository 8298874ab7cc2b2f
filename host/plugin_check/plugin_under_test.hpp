// The plugin that is tried, inside the child process: its library, its model, and the rows that it is tried with.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "host/contract/library.hpp"
#include "host/contract/model.hpp"
#include "host/contract/plugin_file.hpp"
#include "host/plugin_check/rules.hpp"
#include "host/plugin_check/trial_rows.hpp"
#include "host/sandbox/process_state.hpp"
#include "host/sandbox/report.hpp"

namespace flutebook::plugin_check {

/// The rows that a plugin is tried with.
struct TrialOptions {
    std::uint64_t seed;
    std::size_t orders;
    Settings settings;
    std::size_t many_orders = 0;  // for the rule of many orders
};

/// One thread. File and report must outlive it.
class PluginUnderTest {
public:
    PluginUnderTest(const contract::PluginFile& file, const sandbox::ChildReport& report, TrialOptions options)
        : file_(file), report_(report), options_(options) {}

    [[nodiscard]] const contract::PluginFile& file() const { return file_; }
    [[nodiscard]] const sandbox::ChildReport& report() const { return report_; }
    [[nodiscard]] const TrialOptions& options() const { return options_; }

    /// Loads the file at the first call. Throws ModelError where it cannot be loaded.
    [[nodiscard]] const contract::Library& library();

    /// The time that loading took, and the state of the process before and after. Only after library().
    struct Loading {
        double ms;
        sandbox::ProcessState before, after;
    };
    [[nodiscard]] const Loading& loading() const { return *loading_; }

    /// Reads the description at the first call. Throws ModelError where it is invalid.
    [[nodiscard]] const contract::Model& model();

    /// The rows of options(), generated at the first call.
    [[nodiscard]] const std::vector<TrialRow>& rows();

private:
    const contract::PluginFile& file_;
    const sandbox::ChildReport& report_;
    TrialOptions options_;
    std::optional<contract::Library> library_;
    std::optional<Loading> loading_;
    std::optional<contract::Model> model_;
    std::optional<std::vector<TrialRow>> rows_;
};

}  // namespace flutebook::plugin_check
