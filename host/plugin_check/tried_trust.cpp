#include "host/plugin_check/tried_trust.hpp"

#include <fmt/format.h>

#include "host/base/errors.hpp"
#include "host/plugin_check/trial.hpp"

namespace flutebook::plugin_check {

void TriedTrust::check(const contract::PluginFile& file) {
    if (records_.has_passed(file.sha256())) return;
    const CheckFindings findings = try_plugin(file, asked_for_trust(program_));
    if (const RuleFinding* broken = findings.broken())
        throw ModelError(
            broken->rule->is_in_hosts_words()  // said as it stands
                ? fmt::format("{}: {}", file.where(), broken->text)
                : fmt::format("{}: refused by its trial: it {}; ask its author, or take it off plugins.yaml",
                              file.where(), broken->text));
    records_.keep(file.sha256());
}

}  // namespace flutebook::plugin_check
