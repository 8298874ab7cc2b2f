#include "host/trial/tried_trust.hpp"

#include <fmt/format.h>

#include <string_view>

#include "host/errors.hpp"
#include "host/trial/trial.hpp"

namespace flutebook::trial {
namespace {

// What the host itself would have said of the file, had it loaded it here, is said as it stands.
bool is_of_host(std::string_view rule) {
    return rule.rfind("load.", 0) == 0 || rule.rfind("description.", 0) == 0;
}

}  // namespace

void TriedTrust::check(const engine::PluginFile& file) {
    if (records_.has_passed(file.sha256())) return;
    const Findings findings = try_plugin(file, asked_for_trust(program_));
    if (const Finding* broken = findings.broken())
        throw ModelError(
            is_of_host(broken->rule->id)
                ? fmt::format("{}: {}", file.where(), broken->text)
                : fmt::format("{}: refused by its trial: it {}; ask its author, or take it off plugins.yaml",
                              file.where(), broken->text));
    records_.keep(file.sha256());
}

}  // namespace flutebook::trial
