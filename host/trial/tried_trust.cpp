#include "host/trial/tried_trust.hpp"

#include <fmt/format.h>

#include "host/errors.hpp"
#include "host/trial/trial.hpp"

namespace flutebook::trial {

void TriedTrust::check(const engine::PluginFile& file) {
    if (records_.has_passed(file.sha256())) return;
    const Findings findings = try_plugin(file, asked_for_trust(program_));
    if (const Finding* broken = findings.broken())
        throw ModelError(
            broken->rule->is_in_hosts_words()  // said as it stands
                ? fmt::format("{}: {}", file.where(), broken->text)
                : fmt::format("{}: refused by its trial: it {}; ask its author, or take it off plugins.yaml",
                              file.where(), broken->text));
    records_.keep(file.sha256());
}

}  // namespace flutebook::trial
