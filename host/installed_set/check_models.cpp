// A program of the build: tries plugins by every rule, and writes the source that names those that passed.
//
//   flutebook_check_models SOURCE PLUGIN...
//
// Ends with 1, and writes nothing, where a plugin breaks a rule.
#include <fmt/format.h>

#include <cstdio>
#include <exception>
#include <fstream>
#include <string>
#include <vector>

#include "host/contract/plugin_file.hpp"
#include "host/plugin_check/child_process_main.hpp"
#include "host/sandbox/child.hpp"

using namespace flutebook;

namespace {

constexpr std::uint64_t seed = 1;
constexpr std::size_t orders = 1000;

// The SHA-256 of the file; empty where it breaks a rule, which is then printed.
std::string tried(const std::string& name) {
    const contract::PluginFile file = contract::PluginFile::read(name);
    const plugin_check::CheckFindings findings =
        plugin_check::try_plugin(file, plugin_check::asked_for_check(sandbox::own_program(), seed, orders));
    if (findings.has_passed()) return file.sha256();
    for (const plugin_check::RuleFinding& finding : findings.rules)
        if (finding.state == plugin_check::RuleFinding::State::broken)
            fmt::print(stderr, "{}: breaks {}: it {}\n", file.where(), finding.rule->id, finding.text);
    return "";
}

std::string source_of(const std::vector<std::string>& hashes) {
    std::string result =
        "// Written by the build: the models that keep every rule.\n"
        "#include \"host/installed_set/installed_set.hpp\"\n\n"
        "namespace flutebook::installed_set {\n\n"
        "std::span<const std::string_view> installed_models() {\n"
        "    static constexpr std::string_view all[] = {\n";
    for (const std::string& hash : hashes) result += fmt::format("        \"{}\",\n", hash);
    return result + "    };\n    return all;\n}\n\n}  // namespace flutebook::installed_set\n";
}

int run(int count, char** words) {
    std::vector<std::string> hashes;
    for (int i = 2; i < count; ++i) {
        const std::string hash = tried(words[i]);
        if (hash.empty()) return 1;
        hashes.push_back(hash);
    }
    std::ofstream file(words[1], std::ios::trunc);
    file << source_of(hashes);
    file.close();
    return file ? 0 : 1;
}

}  // namespace

int main(int count, char** words) {
    if (const auto code = plugin_check::run_trial(count, words)) return *code;
    if (count < 3) return 2;
    try {
        return run(count, words);
    } catch (const std::exception& error) {
        std::fprintf(stderr, "%s\n", error.what());
        return 1;
    }
}
